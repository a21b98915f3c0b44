package render

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"

	"slabwright/drawing"
)

// The document that canvas writes carries the time of day, in its information
// and in each embedded font, and has no page labels. finish takes it apart into
// its objects, mends those and puts it together again.

var (
	reOffset = regexp.MustCompile(`(?m)^(\d{10}) 00000 n`)
	reKids   = regexp.MustCompile(`/Kids\[([0-9R ]*)\]`)
	reRef    = regexp.MustCompile(`(\d+) 0 R`)
	reLength = regexp.MustCompile(`/Length \d+`)
)

// Numbers that canvas gives to the objects of each document.
const (
	catalogObject = 1
	infoObject    = 2
	pagesObject   = 3
)

var errLayout = errors.New("the document is not laid out as expected")

// finish mends a document and adds bookmarks and page labels.
func finish(doc []byte, sheets []drawing.Sheet, meta Meta) ([]byte, error) {
	objects, head, err := split(doc)
	if err != nil {
		return nil, err
	}
	for i, o := range objects {
		if objects[i], err = undated(o); err != nil {
			return nil, err
		}
	}
	kids := reKids.FindSubmatch(objects[pagesObject-1])
	if kids == nil {
		return nil, errLayout
	}
	pages := reRef.FindAllSubmatch(kids[1], -1)
	if len(pages) != len(sheets) {
		return nil, errLayout
	}
	root := len(objects) + 1
	var labels strings.Builder
	for i, s := range sheets {
		n := root + 1 + i
		var b strings.Builder
		fmt.Fprintf(&b, "<</Title%s/Parent %d 0 R/Dest[%s/Fit]", textString(bookmark(s)), root, pages[i][0])
		if i > 0 {
			fmt.Fprintf(&b, "/Prev %d 0 R", n-1)
		}
		if i < len(sheets)-1 {
			fmt.Fprintf(&b, "/Next %d 0 R", n+1)
		}
		objects = append(objects, []byte(b.String()+">>"))
		fmt.Fprintf(&labels, "%d<</P%s>>", i, textString(s.Name))
	}
	outline := fmt.Sprintf("<</Type/Outlines/First %d 0 R/Last %d 0 R/Count %d>>", root+1, root+len(sheets), len(sheets))
	objects = append(objects[:root-1], append([][]byte{[]byte(outline)}, objects[root-1:]...)...)
	objects[catalogObject-1] = fmt.Appendf(nil, "<</Type/Catalog/Pages %d 0 R/Outlines %d 0 R/PageMode/UseOutlines"+
		"/PageLabels<</Nums[%s]>>/ViewerPreferences<</PrintScaling/None/DisplayDocTitle true>>>>", pagesObject, root, labels.String())
	objects[infoObject-1] = info(meta)
	return join(head, objects), nil
}

// bookmark names a sheet in the outline.
func bookmark(s drawing.Sheet) string {
	if s.Number > 0 {
		return strconv.Itoa(s.Number) + "  " + s.Title
	}
	return s.Title
}

func info(meta Meta) []byte {
	b := []byte("<<")
	for _, f := range [][2]string{
		{"Title", meta.Title}, {"Subject", meta.Subject}, {"Author", meta.Author}, {"Creator", meta.Creator},
	} {
		if f[1] != "" {
			b = fmt.Appendf(b, "/%s%s", f[0], textString(f[1]))
		}
	}
	return append(b, ">>"...)
}

// textString writes a text as hexadecimal UTF-16, which needs no escapes.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

// split gives the values of the objects in order of their numbers, and what
// stands before the first.
func split(doc []byte) (objects [][]byte, head []byte, err error) {
	table := bytes.LastIndex(doc, []byte("\nxref\n")) + 1
	if table == 0 {
		return nil, nil, errLayout
	}
	rows := reOffset.FindAllSubmatch(doc[table:], -1)
	first := table
	for i, m := range rows {
		at, _ := strconv.Atoi(string(m[1]))
		if at >= table {
			return nil, nil, errLayout
		}
		first = min(first, at)
		body, ok := bytes.CutPrefix(doc[at:table], fmt.Appendf(nil, "%d 0 obj\n", i+1))
		if !ok {
			return nil, nil, errLayout
		}
		end := objectEnd(body)
		if end < 0 {
			return nil, nil, errLayout
		}
		objects = append(objects, body[:end])
	}
	if len(objects) < pagesObject {
		return nil, nil, errLayout
	}
	return objects, doc[:first], nil
}

// objectEnd finds the end of an object; a stream is passed over by its length,
// for its bytes may look like anything.
func objectEnd(body []byte) int {
	from := 0
	if dict, n, ok := streamOf(body); ok {
		from = len(dict) + n
	}
	if from > len(body) {
		return -1
	}
	if i := bytes.Index(body[from:], []byte("\nendobj")); i >= 0 {
		return from + i
	}
	return -1
}

const streamWord = ">>stream\n"

// streamOf gives the dictionary of a stream, up to its first byte, and its length.
func streamOf(object []byte) (dict []byte, length int, ok bool) {
	i := bytes.Index(object, []byte(streamWord))
	if end := bytes.Index(object, []byte("\nendobj")); i < 0 || end >= 0 && end < i {
		return nil, 0, false
	}
	dict = object[:i+len(streamWord)]
	length, err := strconv.Atoi(strings.TrimPrefix(string(reLength.Find(dict)), "/Length "))
	return dict, length, err == nil
}

// undated clears the time in the head table of an embedded TrueType font; other
// objects stay as they are. The checksums of the tables, which count it in, are
// mended too.
func undated(object []byte) ([]byte, error) {
	dict, n, ok := streamOf(object)
	if !ok || !bytes.Contains(dict, []byte("/FlateDecode")) {
		return object, nil
	}
	z, err := zlib.NewReader(bytes.NewReader(object[len(dict) : len(dict)+n]))
	if err != nil {
		return nil, fmt.Errorf("reading a stream: %w", err)
	}
	font, err := io.ReadAll(z)
	if err != nil {
		return nil, fmt.Errorf("reading a stream: %w", err)
	}
	if len(font) < 12 || string(font[:4]) != "\x00\x01\x00\x00" {
		return object, nil
	}
	if err := clearHead(font); err != nil {
		return nil, err
	}
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	w.Write(font) // a bytes.Buffer takes everything
	w.Close()
	out := reLength.ReplaceAll(dict, fmt.Appendf(nil, "/Length %d", packed.Len()))
	out = append(out, packed.Bytes()...)
	return append(out, object[len(dict)+n:]...), nil
}

// clearHead zeroes the dates of a font and makes its checksums true again
// (OpenType, tables "head" and table directory).
func clearHead(font []byte) error {
	be := binary.BigEndian
	var head []byte
	for k := range int(be.Uint16(font[4:])) {
		if 12+16*(k+1) > len(font) {
			return errLayout
		}
		row := font[12+16*k:]
		at, size := int(be.Uint32(row[8:])), int(be.Uint32(row[12:]))
		if string(row[:4]) != "head" {
			continue
		}
		if at+size > len(font) || size < 54 {
			return errLayout
		}
		head = font[at : at+size]
		clear(head[8:12])  // checksum of the whole file
		clear(head[20:36]) // created, modified
		be.PutUint32(row[4:], sum32(head))
	}
	if head == nil {
		return errLayout
	}
	const whole = 0xB1B0AFBA
	be.PutUint32(head[8:], whole-sum32(font))
	return nil
}

func sum32(b []byte) (sum uint32) {
	for len(b) >= 4 {
		sum += binary.BigEndian.Uint32(b)
		b = b[4:]
	}
	if len(b) > 0 {
		var last [4]byte
		copy(last[:], b)
		sum += binary.BigEndian.Uint32(last[:])
	}
	return sum
}

// join writes objects, their table and a trailer whose identifier is a digest
// of all of it.
func join(head []byte, objects [][]byte) []byte {
	out := append([]byte{}, head...)
	offsets := make([]int, len(objects))
	for i, o := range objects {
		offsets[i] = len(out)
		out = fmt.Appendf(out, "%d 0 obj\n", i+1)
		out = append(out, o...)
		out = append(out, "\nendobj\n"...)
	}
	digest := sha256.Sum256(out)
	table := len(out)
	out = fmt.Appendf(out, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, at := range offsets {
		out = fmt.Appendf(out, "%010d 00000 n \n", at)
	}
	return fmt.Appendf(out, "trailer\n<</Size %d/Root %d 0 R/Info %d 0 R/ID[<%x><%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		len(objects)+1, catalogObject, infoObject, digest[:16], digest[:16], table)
}
