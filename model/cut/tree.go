package cut

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"slabwright/model"
)

// Mistake is something in an instance that cannot be meant.
type Mistake struct {
	Pos      model.Pos
	Read     string // what stands there
	Expected string
	Hint     string // how to mend it, "" if unknown
}

// String is the mistake in one line: file:line:column: message.
func (m Mistake) String() string {
	s := m.Pos.String() + ": " + m.Read
	if m.Expected != "" {
		s += ": expected " + m.Expected
	}
	if m.Hint != "" {
		s += "; " + m.Hint
	}
	return s
}

// node is a value of a JSON file with its place.
type node struct {
	at     int64 // offset
	text   string
	kind   byte // 's' text, 'n' number, 'b' true or false, '0' null, '{', '['
	flag   bool
	number float64
	list   []*node
	keys   []string
	fields map[string]*node
}

// called is how a message calls what stands there.
func (n *node) called() string {
	switch n.kind {
	case 's':
		return fmt.Sprintf("the text %q", n.text)
	case 'n':
		return "the number " + n.text
	case 'b':
		return n.text
	case '{':
		return "a group in braces"
	case '[':
		return "a list"
	}
	return "null"
}

// reader gathers mistakes while an instance is read.
type reader struct {
	file     string
	data     []byte
	mistakes []Mistake
}

func (r *reader) wrong(at int64, read, expected, hint string) {
	r.mistakes = append(r.mistakes, Mistake{Pos: r.pos(at), Read: read, Expected: expected, Hint: hint})
}

func (r *reader) pos(at int64) model.Pos {
	before := r.data[:min(max(at, 0), int64(len(r.data)))]
	return model.Pos{File: r.file, Line: 1 + bytes.Count(before, []byte("\n")), Column: len(before) - bytes.LastIndexByte(before, '\n')}
}

// maxDepth bounds how deep values lie in each other.
const maxDepth = 20

// parse gives the tree of the file, nil if it is no JSON.
func (r *reader) parse() *node {
	d := json.NewDecoder(bytes.NewReader(r.data))
	d.UseNumber()
	n, err := r.value(d, 0)
	if err == nil {
		if _, err = d.Token(); errors.Is(err, io.EOF) {
			return n
		}
		if err == nil {
			err = errors.New("something stands behind the end of the instance")
		}
	}
	at, what := d.InputOffset(), err.Error()
	var bad *json.SyntaxError
	switch {
	case errors.As(err, &bad):
		at = bad.Offset - 1
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		what = "the file ends too early"
	}
	r.wrong(at, what, "JSON", "look for a comma, a quote or a bracket that is missing before this place")
	return nil
}

func (r *reader) value(d *json.Decoder, depth int) (*node, error) {
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	n := &node{at: d.InputOffset()}
	if depth > maxDepth {
		return nil, errors.New("the values lie too deep in each other")
	}
	switch v := t.(type) {
	case json.Delim:
		n.at--
		n.kind = byte(v)
		if v == '{' {
			return n, r.group(d, n, depth)
		}
		for d.More() {
			c, err := r.value(d, depth+1)
			if err != nil {
				return nil, err
			}
			n.list = append(n.list, c)
		}
		_, err = d.Token()
	case string:
		n.kind, n.text = 's', v
		n.at -= int64(len(v)) + 2
	case json.Number:
		n.kind, n.text = 'n', v.String()
		n.at -= int64(len(n.text))
		n.number, err = v.Float64()
	case bool:
		n.kind, n.flag, n.text = 'b', v, fmt.Sprint(v)
		n.at -= int64(len(n.text))
	default:
		n.kind = '0'
		n.at -= 4
	}
	return n, err
}

func (r *reader) group(d *json.Decoder, n *node, depth int) error {
	n.fields = map[string]*node{}
	for d.More() {
		k, err := d.Token()
		if err != nil {
			return err
		}
		name := k.(string)
		c, err := r.value(d, depth+1)
		if err != nil {
			return err
		}
		if n.fields[name] != nil {
			r.wrong(c.at, fmt.Sprintf("the key %q stands here a second time", name), "one of each", "")
		}
		n.keys = append(n.keys, name)
		n.fields[name] = c
	}
	_, err := d.Token()
	return err
}
