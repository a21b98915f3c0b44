// Package plate bends flat orthotropic plates on supports that can only push.
//
// A plate is any region with holes, thinner where wood is cut out of it. It may
// rest on flexible legs, on rods and on a neighbour; corners may lift. Every
// combination of loads is solved for itself, because what lifts under one load
// bears under another: results of single loads must never be added.
//
// Theory: Reissner-Mindlin plate (transverse shear counts, also across the
// grain, where wood is soft) with small deflections and linear elastic
// material. Element: rectangle with four nodes and assumed shear strains (K. J.
// Bathe, E. N. Dvorkin, A four-node plate bending element based on
// Mindlin/Reissner plate theory and a mixed interpolation, 1985), which does
// not lock in thin plates. The rectangles need not follow the outline: where
// it cuts through one, the stiffness is integrated over the wood alone, exactly,
// since the integrand is a polynomial.
//
// Units: N, mm, N/mm2, tonnes per mm3 nowhere: densities are kg/m3. Axes lie in
// the plate, deflections count downwards, slopes bx and by along x and y;
// moments are positive when the underside is in tension.
package plate
