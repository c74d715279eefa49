package musicxml_test

import (
	"bytes"
	"fmt"
	"strings"

	"weft.example/picking"
	"weft.example/picking/musicxml"
)

// The first note of a score, in a staff of tab alone: an open A with a
// down-stroke, an eighth note that rings on.
func ExampleEncode() {
	song := picking.MustParseProgression("Am=x02210 | G=320003")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Meter: picking.SixEight})
	if err != nil {
		fmt.Println(err)
		return
	}
	var score strings.Builder
	if err := musicxml.Encode(&score, part, musicxml.Options{Staves: musicxml.TabAlone}); err != nil {
		fmt.Println(err)
		return
	}
	_, note, _ := strings.Cut(score.String(), "      <note>\n")
	note, _, _ = strings.Cut(note, "      </note>")
	fmt.Print(note)
	// Output:
	//         <pitch>
	//           <step>A</step>
	//           <octave>2</octave>
	//         </pitch>
	//         <duration>240</duration>
	//         <voice>1</voice>
	//         <type>eighth</type>
	//         <beam number="1">begin</beam>
	//         <notations>
	//           <tied type="let-ring"/>
	//           <technical>
	//             <down-bow/>
	//             <string>5</string>
	//             <fret>0</fret>
	//           </technical>
	//         </notations>
}

func ExampleEncodeCompressed() {
	song := picking.MustParseProgression("Am=x02210 | G=320003")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Meter: picking.SixEight})
	if err != nil {
		fmt.Println(err)
		return
	}
	var plain, compressed bytes.Buffer
	if err := musicxml.Encode(&plain, part, musicxml.Options{}); err != nil {
		fmt.Println(err)
	}
	if err := musicxml.EncodeCompressed(&compressed, part, musicxml.Options{}); err != nil {
		fmt.Println(err)
	}
	fmt.Println(string(compressed.Bytes()[38:72]), compressed.Len() < plain.Len()/5)
	// Output:
	// application/vnd.recordare.musicxml true
}
