package gltf

import (
	"bytes"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/qmuntal/gltf"
	"github.com/qmuntal/gltf/modeler"

	"slabwright/mesh"
	"slabwright/model/geom"
	"slabwright/testdata/judge"
	"slabwright/testdata/sample"
)

func bytesOf(t testing.TB, s mesh.Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func file(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "x.glb")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func read(t testing.TB, b []byte) *gltf.Document {
	t.Helper()
	doc := new(gltf.Document)
	if err := gltf.NewDecoder(bytes.NewReader(b)).Decode(doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestNodesNamesAndMarks(t *testing.T) {
	s := sample.Bench(t, 4)
	doc := read(t, bytesOf(t, s))
	root := doc.Nodes[doc.Scenes[*doc.Scene].Nodes[0]]
	if root.Name != "bench" || len(root.Children) != 4 || root.Scale != [3]float64{0.001, 0.001, 0.001} {
		t.Fatalf("root %+v", root)
	}
	for i, c := range root.Children {
		n, o := doc.Nodes[c], s.Objects[i]
		extras, _ := n.Extras.(map[string]any)
		if n.Name != o.Name || doc.Meshes[*n.Mesh].Name != o.Name || extras["part"] != o.ID || extras["name"] != o.Name {
			t.Errorf("part %d: %q, extras %v", i, n.Name, n.Extras)
		}
		mat := doc.Materials[*doc.Meshes[*n.Mesh].Primitives[0].Material].PBRMetallicRoughness
		if metal := *mat.MetallicFactor == 1; metal != o.Metal || *mat.RoughnessFactor != 0.6 {
			t.Errorf("%s: metal %v, roughness %v", o.Name, *mat.MetallicFactor, *mat.RoughnessFactor)
		}
	}
}

// The corners, taken through node and root, are the scene's in metres with y up.
func TestPlacesInMetres(t *testing.T) {
	s := sample.Bench(t, 3)
	doc := read(t, bytesOf(t, s))
	root := doc.Nodes[0]
	for i, c := range root.Children {
		n := doc.Nodes[c]
		prim := doc.Meshes[*n.Mesh].Primitives[0]
		pos, err := modeler.ReadPosition(doc, doc.Accessors[prim.Attributes[gltf.POSITION]], nil)
		if err != nil {
			t.Fatal(err)
		}
		idx, err := modeler.ReadIndices(doc, doc.Accessors[*prim.Indices], nil)
		if err != nil {
			t.Fatal(err)
		}
		want := s.Objects[i].Mesh()
		for k, v := range idx {
			q := want.Vertices[want.Triangles[k/3][k%3]]
			var p [3]float64
			for axis := range p {
				p[axis] = (float64(pos[v][axis]) + n.Translation[axis]) * root.Scale[axis]
			}
			p = rotate(root.Rotation, p)
			for axis, x := range [3]float64{float64(q.X), float64(q.Z), -float64(q.Y)} {
				if off := math.Abs(p[axis] - x/1000); off > 1e-7 {
					t.Fatalf("%s: corner %v came to %v", n.Name, q, p)
				}
			}
		}
	}
}

// rotate turns a vector by a unit quaternion x, y, z, w.
func rotate(q [4]float64, v [3]float64) [3]float64 {
	cross := func(a, b [3]float64) [3]float64 {
		return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	u := [3]float64{q[0], q[1], q[2]}
	a := cross(u, v)
	b := cross(u, a)
	for i := range v {
		v[i] += 2 * (q[3]*a[i] + b[i])
	}
	return v
}

// Worked values of the sRGB curve, IEC 61966-2-1: 188 is close to half the
// light (0.5029), 10 lies on the straight part (10/255/12.92).
func TestColoursAreLinear(t *testing.T) {
	for c, want := range map[uint8]float64{0: 0, 10: 0.003035270, 188: 0.502886458, 255: 1} {
		if got := linear(c); math.Abs(got-want) > 1e-8 {
			t.Errorf("linear(%d) = %.9f, want %.9f", c, got, want)
		}
	}
}

// A rod must look round and its ends flat: normals on the shell point away from
// the axis, exactly radial at every corner, those on the ends along it.
func TestCurvedSurfacesShadeSmoothly(t *testing.T) {
	solid := geom.Cylinder(geom.V(0, 0), 20, 0, 100, 0.2, "rod")
	m, err := mesh.FromFaces(solid.Faces())
	if err != nil {
		t.Fatal(err)
	}
	c := corners(m.Single(geom.Vec3{}))
	shell := 0
	for i, n := range c.normal {
		if n[2] == 1 || n[2] == -1 {
			continue
		}
		shell++
		p := c.place[i]
		r := math.Hypot(float64(p[0]), float64(p[1]))
		if d := math.Hypot(float64(n[0])-float64(p[0])/r, float64(n[1])-float64(p[1])/r); d > 1e-4 || n[2] != 0 {
			t.Fatalf("normal %v at %v is %g off the radius", n, p, d)
		}
	}
	if want := len(m.Vertices); shell != want || len(c.place) != 2*want {
		t.Errorf("%d corners on the shell, %d in all; want %d and %d", shell, len(c.place), want, 2*want)
	}
	box, err := mesh.FromFaces(geom.Prism(geom.Rect(geom.V(0, 0), geom.V(5, 5)), 0, 5, "box").Faces())
	if err != nil {
		t.Fatal(err)
	}
	if c := corners(box.Single(geom.Vec3{})); len(c.place) != 24 {
		t.Errorf("a box shades with %d corners, want 4 on each of 6 faces", len(c.place))
	}
}

// Judges: assimp reads the file and writes STL, admesh looks at that. Volumes
// are in cubic metres there.
func TestAssimpAndAdmeshFindSoundParts(t *testing.T) {
	s := sample.Bench(t, 6)
	a := judge.ReadAdmesh(t, judge.ToSTL(t, file(t, bytesOf(t, s))))
	if a.Disconnected+a.Removed+a.Added+a.Reversed+a.Backwards != 0 || a.Parts != 6 {
		t.Errorf("%+v", a)
	}
	if want := sample.Volume(s) * 1e-9; math.Abs(a.Volume/want-1) > 1e-4 { // admesh prints six places
		t.Errorf("admesh measures %.9g m3, want %.9g", a.Volume, want)
	}
}

// Judge: the glTF validator of the Khronos Group (npm package gltf-validator).
func TestKhronosValidatorIsContent(t *testing.T) {
	const script = `require('gltf-validator').validateBytes(new Uint8Array(require('fs').readFileSync(process.argv[1])))
		.then(r => console.log(JSON.stringify(r.issues)))`
	out := judge.Script(t, "gltf-validator", script, file(t, bytesOf(t, sample.Bench(t, 5))))
	if !strings.HasPrefix(out, `{"numErrors":0,"numWarnings":0,"numInfos":0,"numHints":0,`) {
		t.Error(out)
	}
}

func TestSameSceneSameBytes(t *testing.T) {
	if !bytes.Equal(bytesOf(t, sample.Bench(t, 5)), bytesOf(t, sample.Bench(t, 5))) {
		t.Error("two runs differ")
	}
}

// full is a disk without room.
type full struct{}

var errFull = errors.New("no space left")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestFaultsAreReported(t *testing.T) {
	if err := Write(io.Discard, mesh.Scene{}); err == nil {
		t.Error("an empty scene was written")
	}
	if err := Write(full{}, sample.Bench(t, 2)); !errors.Is(err, errFull) {
		t.Errorf("a full disk: error %v", err)
	}
}

func BenchmarkWrite(b *testing.B) {
	s := sample.Bench(b, 20)
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
