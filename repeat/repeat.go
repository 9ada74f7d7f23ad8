// Package repeat carries an order along the line of the workshop.
package repeat
