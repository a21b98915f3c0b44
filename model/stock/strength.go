package stock

// Class is a strength class of hardwood, EN 338:2016. Strengths are
// characteristic values, stiffnesses means unless said, all in N/mm2; densities
// in kg/m3.
type Class struct {
	Name                      string
	Bending                   float64 // N/mm2, along the grain
	TensionAlong, TensionOver float64 // N/mm2
	PressAlong, PressOver     float64 // N/mm2
	Shear                     float64 // N/mm2
	ModulusAlong              float64 // N/mm2, mean
	ModulusAlong5             float64 // N/mm2, 5 % fractile
	ModulusOver               float64 // N/mm2, mean
	ShearModulus              float64 // N/mm2, mean
	DensityLow                float64 // kg/m3, characteristic
	DensityMean               float64 // kg/m3
	Source                    string
	Status                    Status
}

const en338 = "EN 338:2016, table of hardwood classes, read in public reproductions"

// Ungraded is the class taken for a furniture slab that nobody graded:
// natural edges, knots and pith included. Engineering judgement, no source.
const Ungraded = "D18"

var classes = []Class{
	{"D18", 18, 11, 0.6, 18, 4.8, 3.5, 9500, 8000, 630, 590, 475, 570, en338, Found},
	{"D24", 24, 14, 0.6, 21, 4.9, 3.7, 10000, 8400, 670, 630, 485, 580, en338, Found},
	{"D27", 27, 16, 0.6, 22, 5.1, 3.8, 10500, 8800, 700, 660, 510, 610, en338, Found},
	{"D30", 30, 18, 0.6, 24, 5.3, 3.9, 11000, 9200, 730, 690, 530, 640, en338, Found},
	{"D35", 35, 21, 0.6, 25, 5.4, 4.1, 12000, 10100, 800, 750, 540, 650, en338, Found},
	{"D40", 40, 24, 0.6, 27, 5.5, 4.2, 13000, 10900, 870, 810, 550, 660, en338, Found},
	{"D45", 45, 27, 0.6, 29, 5.8, 4.4, 13500, 11300, 900, 840, 580, 700, en338, Found},
	{"D50", 50, 30, 0.6, 30, 6.2, 4.5, 14000, 11800, 930, 880, 620, 740, en338, Found},
}

// Classes lists the strength classes from weak to strong.
func Classes() []Class { return append([]Class(nil), classes...) }

// ClassByName finds a strength class. An unknown name gives an error with the
// nearest one.
func ClassByName(name string) (Class, error) {
	var names []string
	for _, c := range classes {
		if plain(c.Name) == plain(name) {
			return c, nil
		}
		names = append(names, c.Name)
	}
	return Class{}, unknown("strength class", name, names)
}
