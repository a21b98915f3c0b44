package drawing_test

import (
	"strings"
	"testing"

	"slabwright/drawing"
	"slabwright/drawing/words"
	"slabwright/model/geom"
	"slabwright/model/unit"
)

var fullBlock = drawing.Block{
	Owner: "A. Joiner", DocumentType: "part drawing", Number: "SW-0103", Revision: "B",
	Issued: "2026-11-03", Surveyed: "2026-11-02", Creator: "slabwright", Approved: "A. J.",
	Material: "ash, oiled", Mass: "37.4 kg", Tolerance: "ISO 2768-1 c", Status: "no finding failed",
}

// The block is 180 wide in the lower right corner of the drawing space, and on
// A4 as wide as that space (ISO 7200:2004, width from memory).
func TestTitleBlockPlace(t *testing.T) {
	for _, c := range iso5457 {
		b, s := c.size.BlockBox(), c.size.Space()
		if b.Width() != 180 || b.Max.X != s.Max.X || b.Min.Y != s.Min.Y {
			t.Errorf("%s: title block at %v", c.size.Name, b)
		}
	}
	if drawing.A4.BlockBox().Min.X != drawing.A4.Space().Min.X {
		t.Error("the title block does not fill the width of A4")
	}
}

// Mandatory fields of ISO 7200:2004 (public list: legal owner, identification
// number, date of issue, sheet number, title, approval person, creator,
// document type), and what a shop asks for beside them.
func TestTitleBlockFields(t *testing.T) {
	s := drawing.Sheet{Name: "03-slab", Title: "Front board", Size: drawing.A3, Scale: "1:10", Number: 3, Of: 8}
	text := drawing.Dump(drawing.Finish(s, fullBlock))
	for _, want := range []string{
		"A. Joiner", "SW-0103", "2026-11-03", "3 / 8", "Front board", "A. J.", "slabwright", "part drawing",
		"B", "1:10", "A3", "2026-11-02", "ash, oiled", "37.4 kg", "ISO 2768-1 c", "no finding failed",
		"Dimensions in mm", "Do not scale. Work to figured sizes.", "100 mm", "owner", "approved by", "projection",
	} {
		if !strings.Contains(text, `"`+want+`"`) {
			t.Errorf("the title block lacks %q", want)
		}
	}
}

// A stamp takes the place of the status.
func TestStamp(t *testing.T) {
	s := framed(drawing.A3)
	s.Items, s.Stamp = nil, "NOT FOR THE SHOP"
	text := drawing.Dump(drawing.Finish(s, fullBlock))
	if !strings.Contains(text, `"NOT FOR THE SHOP" `) || strings.Contains(text, "no finding failed") {
		t.Error("the stamp is not where it belongs")
	}
}

// Whatever the fields hold, no text touches another or a line, and nothing is
// lost from a date, a number or a mass.
func TestTitleBlockNeverClashes(t *testing.T) {
	long := strings.Repeat("a rather long entry ", 12)
	crowded := drawing.Block{
		Owner: long, DocumentType: long, Number: "SW-2026-0103-A12", Revision: "AB", Issued: "2026-11-03",
		Surveyed: "2026-11-03", Creator: long, Approved: long, Material: long, Mass: "1234.5 kg", Tolerance: long,
		Status: long, Projection: drawing.ThirdAngle,
	}
	oneWord := crowded
	oneWord.Owner, oneWord.Material, oneWord.Tolerance = strings.Repeat("W", 90), strings.Repeat("g", 90), strings.Repeat("Ä", 90)
	for _, b := range []drawing.Block{{}, fullBlock, crowded, oneWord} {
		for _, size := range []drawing.Size{drawing.A4, drawing.A3, drawing.A2, drawing.A1, drawing.A4.Turned(), drawing.A3.Turned()} {
			for _, title := range []string{"", "Plan", "Front board, ash, natural edge", long} {
				for _, stamp := range []string{"", "NOT FOR THE SHOP", long} {
					s := drawing.Sheet{Name: "x", Title: title, Size: size, Scale: "1:10", Number: 12, Of: 24, Stamp: stamp}
					s = drawing.Finish(s, b)
					for _, c := range drawing.Overlaps(s) {
						t.Errorf("%s: %v", size.Name, c)
					}
					if text := drawing.Dump(s); b.Number != "" && !(strings.Contains(text, `"`+b.Number+`"`) &&
						strings.Contains(text, `"`+b.Issued+`"`) && strings.Contains(text, `"`+b.Mass+`"`)) {
						t.Errorf("%s: a number or date is cut short", size.Name)
					}
				}
			}
		}
	}
}

// A second language is one more table.
func TestWords(t *testing.T) {
	b := fullBlock
	b.Language = &words.Language{Table: map[string]string{"Do not scale. Work to figured sizes.": "Nicht messen, Maße gelten."}}
	if text := drawing.Dump(drawing.Finish(framed(drawing.A4), b)); !strings.Contains(text, "Nicht messen") {
		t.Error("the words of the block are not used")
	}
}

// ISO 5456-2: in first angle a view stands on the far side of the front view
// from where it is taken, in third angle on the near side. The circles are the
// view on the small end, for both are drawn full: the small end hides nothing.
func TestProjectionSymbol(t *testing.T) {
	for _, p := range []drawing.Projection{drawing.FirstAngle, drawing.ThirdAngle} {
		k := plot(p.Symbol(geom.V(0, 0), 4)...)
		cone := k.lines[0]
		left, right := end(cone.chain, -1), end(cone.chain, 1)
		smallAt, smallSize := left.x, left.size
		bigSize := right.size
		if right.size < left.size {
			smallAt, smallSize, bigSize = right.x, right.size, left.size
		}
		middle := (left.x + right.x) / 2
		viewedFrom := smallAt - middle // the eye looks at the small end
		stands := k.arcs[0].centre.X - middle
		if far := viewedFrom*stands < 0; far != (p == drawing.FirstAngle) {
			t.Errorf("%v: the circles stand on the wrong side", p)
		}
		if bigSize != 2*smallSize || right.x-left.x != 2*smallSize { // proportions from memory
			t.Errorf("%v: ends %v and %v, length %v", p, smallSize, bigSize, right.x-left.x)
		}
		if 2*k.arcs[0].radius != smallSize || 2*k.arcs[1].radius != bigSize {
			t.Errorf("%v: circles %v and %v do not match the cone", p, k.arcs[0].radius, k.arcs[1].radius)
		}
	}
}

type coneEnd struct{ x, size unit.Length }

// end gives the place and the height of the leftmost or rightmost side.
func end(loop []geom.Vec, sign unit.Length) coneEnd {
	e := coneEnd{x: -1e9 * sign}
	for _, p := range loop {
		if (p.X-e.x)*sign > 0 {
			e.x = p.X
		}
	}
	var low, high unit.Length = 1e9, -1e9
	for _, p := range loop {
		if p.X == e.x {
			low, high = min(low, p.Y), max(high, p.Y)
		}
	}
	e.size = high - low
	return e
}
