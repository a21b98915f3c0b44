package step

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"

	"slabwright/model/geom"
)

// file strings the entities of the data section together (ISO 10303-21).
type file struct {
	data  bytes.Buffer
	count int
}

// ref is the name of an entity, such as #12.
type ref int

func (r ref) String() string { return "#" + strconv.Itoa(int(r)) }

// put adds an entity: its keyword and its parameters.
func (f *file) put(keyword string, params ...any) ref {
	f.count++
	fmt.Fprintf(&f.data, "#%d=%s(", f.count, keyword)
	for i, p := range params {
		if i > 0 {
			f.data.WriteByte(',')
		}
		f.param(p)
	}
	f.data.WriteString(");\n")
	return ref(f.count)
}

// complex adds an entity of several types at once, written out already.
func (f *file) complex(text string) ref {
	f.count++
	fmt.Fprintf(&f.data, "#%d=(%s);\n", f.count, text)
	return ref(f.count)
}

// raw is a parameter that stands as it is: $, *, .T.
type raw string

func (f *file) param(p any) {
	switch p := p.(type) {
	case ref:
		f.data.WriteString(p.String())
	case raw:
		f.data.WriteString(string(p))
	case string:
		f.data.WriteString(quoted(p))
	case float64:
		f.data.WriteString(real(p))
	case bool:
		f.data.WriteString(map[bool]string{true: ".T.", false: ".F."}[p])
	case []ref:
		f.data.WriteByte('(')
		for i, r := range p {
			if i > 0 {
				f.data.WriteByte(',')
			}
			f.data.WriteString(r.String())
		}
		f.data.WriteByte(')')
	case geom.Vec3:
		fmt.Fprintf(&f.data, "(%s,%s,%s)", real(float64(p.X)), real(float64(p.Y)), real(float64(p.Z)))
	default:
		panic(fmt.Sprintf("step: no way to write %T", p))
	}
}

// real writes a number to a hundred thousandth of a micrometre, with the point
// that the standard wants.
func real(v float64) string {
	if math.Abs(v) < 1e-15 {
		return "0."
	}
	s := strings.ToUpper(strconv.FormatFloat(v, 'g', 15, 64))
	if m, e, ok := strings.Cut(s, "E"); ok {
		if !strings.Contains(m, ".") {
			m += "."
		}
		return m + "E" + e
	}
	if !strings.Contains(s, ".") {
		s += "."
	}
	return s
}

// quoted writes a text; letters beyond ASCII go as \X2\ with UTF-16 in hex.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('\'')
	for _, r := range s {
		switch {
		case r == '\'' || r == '\\':
			b.WriteRune(r)
			b.WriteRune(r)
		case r >= ' ' && r <= '~':
			b.WriteRune(r)
		case r > 0xFFFF:
			fmt.Fprintf(&b, `\X4\%08X\X0\`, r)
		default:
			fmt.Fprintf(&b, `\X2\%04X\X0\`, r)
		}
	}
	b.WriteByte('\'')
	return b.String()
}
