// Command slabwright builds fitted worktops from tape readings: drawings,
// models, lists and a verdict.
package main

import (
	"os"

	"slabwright/cmd"
	"slabwright/presets"
)

func main() { os.Exit(cmd.Main(os.Args[1:], presets.All()...)) }
