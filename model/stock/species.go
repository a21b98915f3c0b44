package stock

import "slabwright/model/unit"

// Species is a kind of wood. Density is the mean at 12 % moisture. Radial and
// Tangential are the relative movement across the grain per percent of
// moisture, valid from 6 to 14 %: 0.0038 means 0.38 % of the width. Modulus is
// the mean stiffness along the grain of small clear wood, in N/mm2; a design
// takes it from the strength class instead (Class).
type Species struct {
	Name          string
	Botanical     string
	Density       unit.Density
	Radial        float64 // relative movement per percent of moisture
	Tangential    float64 // relative movement per percent of moisture
	Modulus       float64 // N/mm2
	Graded        string  // strength class of graded timber, "" if none is known
	GradedNote    string
	Source        string
	Status        Status
	StatusDetails string
}

const (
	usdaHandbook = "USDA Wood Handbook FPL-GTR-190 (2010), Tables 4-3, 5-3, 13-5"
	dinSwelling  = "differential swelling as used in German-language timber literature (DIN 68100 type values); trade densities at 12 %"
	dinDoubt     = "from memory, movement +-10 to 20 %"
	en1912       = "EN 1912, German grading to DIN 4074-5, from memory"
)

// The species. Unqualified names are the European species.
var (
	Ash = Species{
		Name: "European ash", Botanical: "Fraxinus excelsior", Density: 700,
		Radial: 0.0021, Tangential: 0.0038, Modulus: 13000,
		Graded: "D40", GradedNote: en1912 + ", weak; D40 also in a trade text",
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	Oak = Species{
		Name: "European oak", Botanical: "Quercus robur/petraea", Density: 690,
		Radial: 0.0018, Tangential: 0.0034, Modulus: 11000,
		Graded: "D30", GradedNote: en1912 + "; D30 also in a trade text",
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	Beech = Species{
		Name: "European beech", Botanical: "Fagus sylvatica", Density: 720,
		Radial: 0.0020, Tangential: 0.0041, Modulus: 14000,
		Graded: "D35", GradedNote: en1912 + "; D35 also in a trade text",
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	Walnut = Species{
		Name: "European walnut", Botanical: "Juglans regia", Density: 670,
		Radial: 0.0018, Tangential: 0.0029, Modulus: 12000,
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	Cherry = Species{
		Name: "European cherry", Botanical: "Prunus avium", Density: 610,
		Radial: 0.0017, Tangential: 0.0030, Modulus: 10500,
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	Sycamore = Species{
		Name: "sycamore maple", Botanical: "Acer pseudoplatanus", Density: 630,
		Radial: 0.0015, Tangential: 0.0026, Modulus: 10500,
		Graded: "D30", GradedNote: en1912 + ", weak",
		Source: dinSwelling, Status: Memory, StatusDetails: dinDoubt,
	}
	WhiteOak = Species{
		Name: "white oak", Botanical: "Quercus alba", Density: 762,
		Radial: 0.00180, Tangential: 0.00365, Modulus: 12300,
		Source: usdaHandbook, Status: Partly,
		StatusDetails: "movement is that of white oak, commercial; modulus from a third-party list",
	}
	RedOak = Species{
		Name: "red oak", Botanical: "Quercus rubra", Density: 706,
		Radial: 0.00158, Tangential: 0.00369, Modulus: 12500,
		Source: usdaHandbook, Status: Partly,
		StatusDetails: "movement is that of red oak, commercial; density and modulus from memory",
	}
	AmericanBeech = Species{
		Name: "American beech", Botanical: "Fagus grandifolia", Density: 717,
		Radial: 0.00190, Tangential: 0.00431, Modulus: 11900,
		Source: usdaHandbook, Status: Found,
	}
	WhiteAsh = Species{
		Name: "white ash", Botanical: "Fraxinus americana", Density: 672,
		Radial: 0.00169, Tangential: 0.00274, Modulus: 12000,
		Source: usdaHandbook, Status: Found,
	}
	HardMaple = Species{
		Name: "hard maple", Botanical: "Acer saccharum", Density: 706,
		Radial: 0.00165, Tangential: 0.00353, Modulus: 12600,
		Source: usdaHandbook, Status: Found,
	}
	BlackWalnut = Species{
		Name: "black walnut", Botanical: "Juglans nigra", Density: 616,
		Radial: 0.00190, Tangential: 0.00274, Modulus: 11600,
		Source: usdaHandbook, Status: Found, StatusDetails: "density and modulus from a third-party list",
	}
	BlackCherry = Species{
		Name: "black cherry", Botanical: "Prunus serotina", Density: 560,
		Radial: 0.00126, Tangential: 0.00248, Modulus: 10300,
		Source: usdaHandbook, Status: Found,
	}
)

// AllSpecies lists the species, European ones first.
func AllSpecies() []Species {
	return []Species{
		Ash, Oak, Beech, Walnut, Cherry, Sycamore,
		WhiteOak, RedOak, AmericanBeech, WhiteAsh, HardMaple, BlackWalnut, BlackCherry,
	}
}

// speciesAlias leads from other trade names to the name in the table.
var speciesAlias = []struct{ say, mean string }{
	{"ash", "European ash"}, {"oak", "European oak"}, {"beech", "European beech"},
	{"walnut", "European walnut"}, {"cherry", "European cherry"}, {"sycamore", "sycamore maple"},
	{"sugar maple", "hard maple"}, {"northern red oak", "red oak"},
}

// SpeciesByName finds a species by its trade name, case aside. "ash", "oak",
// "beech", "walnut", "cherry" and "sycamore" mean the European species. An
// unknown name gives an error with the nearest one.
func SpeciesByName(name string) (Species, error) {
	key := plain(name)
	var names []string
	for _, a := range speciesAlias {
		if key == a.say {
			key = plain(a.mean)
		}
		names = append(names, a.say)
	}
	for _, s := range AllSpecies() {
		if plain(s.Name) == key {
			return s, nil
		}
		names = append(names, s.Name)
	}
	return Species{}, unknown("species", name, names)
}
