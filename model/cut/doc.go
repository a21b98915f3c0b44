// Package cut says what to buy and where to cut: it reads bare cutting
// instances, chooses slabs and bars on offer for the parts of a design, and puts
// saw cuts in order.
package cut
