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
	"runtime"
	"strconv"
	"strings"
	"sync"
)

var (
	reOffset = regexp.MustCompile(`(?m)^(\d{10}) 00000 n`)
	reLength = regexp.MustCompile(`/Length \d+`)
)

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

// each replaces every object by what f makes of it, several at a time.
func each(objects [][]byte, f func([]byte) ([]byte, error)) error {
	errs := make([]error, len(objects))
	var wg sync.WaitGroup
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range objects {
		turn <- struct{}{}
		wg.Go(func() {
			objects[i], errs[i] = f(objects[i])
			<-turn
		})
	}
	wg.Wait()
	return errors.Join(errs...)
}

// mend packs a plain stream, and clears the time in the head table of an
// embedded TrueType font. Other objects stay as they are.
func mend(object []byte) ([]byte, error) {
	dict, n, ok := streamOf(object)
	if !ok {
		return object, nil
	}
	data, tail := object[len(dict):len(dict)+n], object[len(dict)+n:]
	if !bytes.Contains(dict, []byte("/FlateDecode")) {
		return pack(bytes.Replace(dict, []byte("<<"), []byte("<</Filter/FlateDecode"), 1), data, tail)
	}
	z, err := zlib.NewReader(bytes.NewReader(data))
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
	return pack(dict, font, tail)
}

func pack(dict, data, tail []byte) ([]byte, error) {
	var packed bytes.Buffer
	w := packers.Get().(*zlib.Writer)
	defer packers.Put(w)
	w.Reset(&packed)
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	out := reLength.ReplaceAll(dict, fmt.Appendf(nil, "/Length %d", packed.Len()))
	out = append(out, packed.Bytes()...)
	return append(out, tail...), nil
}

var packers = sync.Pool{New: func() any { return zlib.NewWriter(nil) }}

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
