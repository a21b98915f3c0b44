package model

import (
	"slabwright/model/calc/wiring"
	"slabwright/model/unit"
)

// Wiring is what is to be connected: devices, cables between them, and light
// strips in grooves.
type Wiring struct {
	Devices []Device
	Cables  []Cable
	Lights  []Light
	Pos     Pos

	Channels []Channel
	Slots    []Slot
	Lids     []LidOn
}

// Device is a place where cables end. One of Socket, Wall, On, Under and Inside
// tells where it is: a socket is an obstacle of the room, out of a wall cables
// come at Along from its left corner and Height above the floor, a table rolls
// out; on and under a slab it stands at X from the left end of the reference
// edge and Back from that edge.
type Device struct {
	Name              string
	Socket            string
	On, Under, Inside string
	X, Back           unit.Length
	Wall              string
	Along, Height     unit.Length
	Pos               Pos
}

// CableClass tells which cables may share a channel.
type CableClass string

// Classes of cables.
const (
	Mains      CableClass = "mains"
	LowVoltage CableClass = "low voltage"
	Data       CableClass = "data"
)

// CableClasses lists the classes in the order of the help texts.
var CableClasses = []CableClass{Mains, LowVoltage, Data}

// Cable runs from one device to another.
type Cable struct {
	Name     string
	From, To string
	Class    CableClass
	Dia      unit.Length
	Bend     unit.Length // least radius; 0: by its diameter
	Plug     unit.Length // the largest thing at its end that must pass holes; 0: it is fitted afterwards
	Stock    unit.Length // length that it has; 0: cut to length
	Pos      Pos
}

// Light is a light strip in a groove, fed by a supply. Watts and volts are SI.
type Light struct {
	Name   string
	In     string // groove
	Supply string // device that feeds it
	Strip  wiring.Strip
	Dimmer string // device with the dimmer; "": none
	Pos    Pos
}
