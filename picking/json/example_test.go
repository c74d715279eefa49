package json_test

import (
	"bytes"
	std "encoding/json"
	"fmt"
	"os"
	"strings"

	"weft.example/picking"
	"weft.example/picking/json"
)

func Example() {
	song := picking.MustParseProgression("Em=022000")
	figure := picking.Figures{picking.MustParseFigure("6")}
	part, err := picking.Arrange(song, figure, picking.Setting{Title: "One note", Once: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	var object, indented bytes.Buffer
	if err := json.Encode(&object, part, json.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	if err := std.Indent(&indented, object.Bytes(), "", "  "); err != nil {
		fmt.Println(err)
		return
	}
	indented.WriteTo(os.Stdout)
	// Output:
	// {
	//   "version": 1,
	//   "title": "One note",
	//   "meter": "4/4",
	//   "tempo": 80,
	//   "ticksPerQuarter": 480,
	//   "tuning": "E2 A2 D3 G3 B3 E4",
	//   "frets": 24,
	//   "capo": 0,
	//   "scaleLength": 645.16,
	//   "stringSpacing": 10.8,
	//   "hand": "right",
	//   "strokes": "toward-next",
	//   "fit": "contour",
	//   "loop": false,
	//   "travel": {
	//     "spacings": 0,
	//     "millimetres": 0
	//   },
	//   "remarks": [],
	//   "bars": [
	//     {
	//       "number": 1,
	//       "written": 1,
	//       "pass": 1,
	//       "at": 0,
	//       "length": 1920,
	//       "chords": [
	//         {
	//           "at": 0,
	//           "length": 1920,
	//           "symbol": "Em",
	//           "sounds": "Em",
	//           "figure": 1,
	//           "shape": "022000",
	//           "start": {
	//             "string": 6,
	//             "reason": "root"
	//           },
	//           "bass": 6,
	//           "root": 6,
	//           "fit": {
	//             "strings": [
	//               6
	//             ],
	//             "csim": 1,
	//             "cplussim": 1,
	//             "losses": [],
	//             "remarks": []
	//           }
	//         }
	//       ],
	//       "picks": [
	//         {
	//           "at": 0,
	//           "length": 1920,
	//           "rings": 3840,
	//           "event": 1,
	//           "string": 6,
	//           "fret": 0,
	//           "pitch": 40,
	//           "note": "E2",
	//           "stroke": "down",
	//           "why": "last",
	//           "travel": 0
	//         }
	//       ]
	//     }
	//   ]
	// }
}

func ExampleDecode() {
	song := picking.MustParseProgression("Am=x02210")
	figure := picking.Figures{picking.MustParseFigure("5 3 2 1")}
	part, err := picking.Arrange(song, figure, picking.Setting{})
	if err != nil {
		fmt.Println(err)
		return
	}
	var object strings.Builder
	if err := json.Encode(&object, part, json.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	again, err := json.Decode(strings.NewReader(object.String()))
	fmt.Println(again.Bars[0].Chords[0].Chord, again.Travel, err)
	_, err = json.Decode(strings.NewReader(strings.Replace(object.String(), `"pitch":45`, `"pitch":46`, 1)))
	fmt.Println(err)
	// Output:
	// Am 6 <nil>
	// bars[0].picks[0].pitch: 46 where string 5, fret 0 sounds 45
}
