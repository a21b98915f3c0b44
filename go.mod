module slabwright

go 1.26.4

require (
	codeberg.org/go-fonts/dejavu v0.4.0
	github.com/tdewolff/canvas v0.0.0-20260820161200-72985dc66d4e
	golang.org/x/image v0.44.0
)

require (
	codeberg.org/go-pdf/fpdf v0.12.0 // indirect
	github.com/BurntSushi/freetype-go v0.0.0-20160129220410-b763ddbfe298 // indirect
	github.com/BurntSushi/graphics-go v0.0.0-20160129215708-b43f31a4a966 // indirect
	github.com/BurntSushi/xgb v0.0.0-20210121224620-deaf085860bc // indirect
	github.com/BurntSushi/xgbutil v0.0.0-20190907113008-ad855c713046 // indirect
	github.com/ByteArena/poly2tri-go v0.0.0-20170716161910-d102ad91854f // indirect
	github.com/andybalholm/brotli v1.2.2 // indirect
	github.com/benoitkugler/textlayout v0.3.2 // indirect
	github.com/benoitkugler/textprocessing v0.0.6 // indirect
	github.com/go-fonts/latin-modern v0.3.3 // indirect
	github.com/go-text/typesetting v0.3.4 // indirect
	github.com/goccy/go-yaml v1.19.2
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0 // indirect
	github.com/hpinc/go3mf v0.24.2
	github.com/hschendel/stl v1.0.4
	github.com/pkg/errors v0.9.1 // indirect
	github.com/qmuntal/gltf v0.28.0
	github.com/qmuntal/opc v0.7.10 // indirect
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/srwiley/rasterx v0.0.0-20220730225603-2ab79fcdd4ef // indirect
	github.com/srwiley/scanx v0.0.0-20190309010443-e94503791388 // indirect
	github.com/tdewolff/font v0.0.0-20260527091451-1663e68cb8a4 // indirect
	github.com/tdewolff/minify/v2 v2.24.16 // indirect
	github.com/tdewolff/parse/v2 v2.8.15 // indirect
	github.com/unixpickle/essentials v1.3.0 // indirect
	github.com/unixpickle/model3d v0.4.22
	github.com/unixpickle/splaytree v1.2.0 // indirect
	github.com/yuin/goldmark v1.8.5 // indirect
	golang.org/x/net v0.57.0 // indirect
	golang.org/x/sys v0.50.0
	golang.org/x/text v0.40.0 // indirect
	gonum.org/v1/gonum v0.17.0
	modernc.org/knuth v0.5.5 // indirect
	modernc.org/token v1.1.0 // indirect
	star-tex.org/x/tex v0.7.1 // indirect
)
