// Package bring finds out how the finished parts of a design come to their
// places: in which order, and on which way each goes in between walls, what is on
// them, and the parts that are there already.
//
// It works backwards: what can be taken out of the finished desk can be put in.
// The room in front of a part's place is taken to be reached when the part has
// left the space over, under and behind its front; how it gets that far through
// the house is another question.
package bring
