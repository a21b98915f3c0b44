// Package saw plans saw cuts: bars into lengths, slabs into rectangles by cuts
// that run right across the piece they divide. A plan comes with a proved bound
// on the best possible one and is called optimal only where both meet. Nothing
// here looks at the clock: the work is counted in steps, so that the same
// problem gives the same plan.
//
// Every saw cut takes away the kerf. What is left beside a piece and is narrower
// than the kerf is sawn to dust.
package saw
