package job

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"

	"slabwright/model"
)

// Limits of a job file, far above any real one.
const (
	maxBytes = 1 << 20
	maxDepth = 12
	maxKeys  = 10000 // the YAML parser takes time by their square
)

// place is a line and a column, both from 1.
type place struct{ line, column int }

// reader collects mistakes while a file is read.
type reader struct {
	file     string
	lines    []string
	mistakes []Mistake
}

func newReader(file string) *reader { return &reader{file: file} }

// wrong notes a mistake.
func (r *reader) wrong(at place, read, expected, hint string) {
	m := Mistake{Pos: r.pos(at), Read: read, Expected: expected, Hint: hint}
	if at.line >= 1 && at.line <= len(r.lines) {
		m.Source = r.lines[at.line-1]
	}
	r.mistakes = append(r.mistakes, m)
}

func (r *reader) pos(at place) model.Pos {
	return model.Pos{File: r.file, Line: at.line, Column: at.column}
}

func tokenPlace(t *token.Token) place {
	if t == nil || t.Position == nil {
		return place{1, 1}
	}
	return place{max(t.Position.Line, 1), max(t.Position.Column, 1)}
}

// parse gives the tree of a job file, nil if there is none.
func (r *reader) parse(data []byte) ast.Node {
	if len(data) > maxBytes {
		r.wrong(place{1, 1}, fmt.Sprintf("a file of %.1f MB", float64(len(data))/1e6), "a job file of at most 1 MB", "is this the right file?")
		return nil
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	data = bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
	r.lines = strings.Split(string(data), "\n")
	if !r.plainText(data) {
		return nil
	}
	var tokens token.Tokens
	var file *ast.File
	err := guard(func() error { tokens = lexer.Tokenize(string(data)); return nil })
	if err == nil {
		if !r.plainYAML(tokens) {
			return nil
		}
		err = guard(func() (err error) { file, err = parser.Parse(tokens, 0, parser.AllowDuplicateMapKey()); return })
	}
	if err != nil {
		r.syntax(err)
		return nil
	}
	var body ast.Node
	for _, d := range file.Docs {
		if d.Body == nil {
			continue
		}
		if body != nil {
			r.wrong(tokenPlace(d.Start), "a second document", "one job in one file", "take out the line --- and what follows, or put it into a file of its own")
			return nil
		}
		body = d.Body
	}
	if body == nil {
		r.wrong(place{1, 1}, "an empty file", "a job with title, room and design", "slabwright new writes one to start from")
	}
	return body
}

// plainText refuses what is no UTF-8 text.
func (r *reader) plainText(data []byte) bool {
	at := place{1, 1}
	for i := 0; i < len(data); {
		c, n := utf8.DecodeRune(data[i:])
		switch {
		case c == utf8.RuneError && n == 1:
			r.wrong(at, fmt.Sprintf("the byte 0x%02X", data[i]), "text in UTF-8", "save the file as UTF-8 in your editor")
			return false
		case c < ' ' && c != '\n' && c != '\t' || c == 0x7f:
			r.wrong(at, fmt.Sprintf("the control character 0x%02X", c), "plain text", "is this the right file?")
			return false
		case c == '\n':
			at = place{at.line + 1, 0}
		}
		at.column++
		i += n
	}
	return true
}

// plainYAML refuses, before the tree is built, the parts of YAML that a job
// file has no use for, and nesting that only an attack would have.
func (r *reader) plainYAML(tokens token.Tokens) bool {
	before, depth, line, entries, keys := len(r.mistakes), 0, 0, 0, 0
	for _, t := range tokens {
		at := tokenPlace(t)
		if at.line != line {
			line, entries = at.line, 0
		}
		switch t.Type {
		case token.AnchorType, token.AliasType, token.MergeKeyType:
			r.wrong(at, fmt.Sprintf("%q starts an anchor or a reference to one", t.Value), "every value written out", "repeat the value, or put the text in quotes")
		case token.TagType:
			r.wrong(at, fmt.Sprintf("%q is a type tag", t.Value), "a plain value", "take the tag out, or put the text in quotes")
		case token.MappingKeyType:
			r.wrong(at, `a key after "?"`, "a key as in  title: Print bench", `take the "?" out`)
		case token.DirectiveType:
			r.wrong(at, `a line that starts with "%"`, "a plain job file", "take the line out")
		case token.LiteralType, token.FoldedType:
			r.wrong(at, fmt.Sprintf("a block of text after %q", t.Value), "text in one line", "")
		case token.InvalidType:
			r.invalid(t)
		case token.SequenceStartType, token.MappingStartType:
			depth++
		case token.SequenceEndType, token.MappingEndType:
			depth--
		case token.SequenceEntryType:
			entries++
		case token.MappingValueType:
			keys++
		}
		if keys > maxKeys {
			r.wrong(at, fmt.Sprintf("more than %d keys", maxKeys), "a job file", "is this the right file?")
			return false
		}
		if depth > maxDepth || entries > maxDepth {
			r.wrong(at, "nesting too deep to be meant", fmt.Sprintf("at most %d levels", maxDepth), "")
			return false
		}
	}
	return len(r.mistakes) == before
}

// invalid speaks of a token that YAML does not have.
func (r *reader) invalid(t *token.Token) {
	at := tokenPlace(t)
	if strings.Contains(t.Error, "tab") || strings.Contains(t.Error, "'\t'") {
		r.wrong(at, "a tab before the text", "spaces: YAML indents with spaces only", "replace the tab by two spaces for each level")
		return
	}
	r.reword(at, t.Error)
}

// syntaxWords puts what the parser says into words for somebody who has never
// heard of YAML's grammar.
var syntaxWords = []struct{ says, read, expected, hint string }{
	{"mapping value is not allowed", "a second colon, or a line that is indented too far", "one key and one value in a line", "put text with a colon in quotes, and start the keys of a section in the same column"},
	{"value is not allowed", "a line or word that belongs to nothing before it", "the keys of a section in the same column", "check the indentation of this line and the quotes before it"},
	{"must be specified", "a list or a section in brackets that goes on without a comma", "a comma or the closing bracket", "check the brackets of the line before"},
	{"end token", "an opening bracket without its end", "the closing bracket", ""},
	{"corresponding to", "a closing bracket without its start", "an opening bracket before it", ""},
	{"end character of", "an opening quote without its end", "the closing quote", "lengths such as 8' 2\" need no quotes at all"},
	{"invalid key", "a list or a section where a key should be", "a key as in  title: Print bench", ""},
	{"non-map value", "a line without a colon", "a key as in  title: Print bench", "put a space after the colon"},
	{"reserved character", "a value that starts with a reserved character", "plain text", "put it in quotes"},
}

// syntax notes what the parser has to say.
func (r *reader) syntax(err error) {
	var ye yaml.Error
	if errors.As(err, &ye) {
		r.reword(tokenPlace(ye.GetToken()), ye.GetMessage())
		return
	}
	r.reword(place{1, 1}, err.Error())
}

func (r *reader) reword(at place, says string) {
	for _, w := range syntaxWords {
		if strings.Contains(says, w.says) {
			r.wrong(at, w.read, w.expected, w.hint)
			return
		}
	}
	r.wrong(at, "no YAML: "+says, "keys and values as in  title: Print bench", "")
}

// guard calls into the YAML library. A panic in there is about this text, not
// about the state of the program, so it counts as unreadable text.
func guard(call func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the text cannot be taken apart (%v)", p)
		}
	}()
	return call()
}
