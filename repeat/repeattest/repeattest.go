// Package repeattest holds what the tests of several packages share: goldens of
// text and of pictures, and the way to call a reader from outside the program.
package repeattest
