// Package ui is the window: five stations in the order of the work, one table of
// commands, and a drawing surface in the middle. The window holds no design of
// its own: it shows a repeat.Work and changes orders by edits of the document
// package only. It never imports Fyne's app, so its tests need no display.
package ui
