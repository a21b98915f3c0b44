// Package presets holds the ready designs. One design is one file; its job file
// stands in the folder of the same name.
package presets

import "slabwright/model"

// All gives every preset in the order of the help.
func All() []model.Preset { return []model.Preset{Studio, Corner, Alcove} }
