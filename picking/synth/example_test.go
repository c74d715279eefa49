package synth_test

import (
	"bytes"
	"fmt"

	"weft.example/picking"
	"weft.example/picking/synth"
	"weft.example/picking/synth/wav"
)

func lesson() picking.Passage {
	song := picking.MustParseProgression("Am=x02210 | G=320003")
	figures := picking.Figures{picking.MustParseFigure("5 3 2 1 2 3")}
	part, err := picking.Arrange(song, figures, picking.Setting{Meter: picking.SixEight, Tempo: 60})
	if err != nil {
		panic(err)
	}
	return part
}

// A player in an audio callback: it fills what it is given and says which pick
// sounds, for a page to light.
func ExamplePlayer() {
	player, err := synth.New(48000, lesson(), synth.Options{Rounds: synth.Endless, Click: synth.AutoClick})
	if err != nil {
		fmt.Println(err)
		return
	}
	left, right := make([]float32, 24000), make([]float32, 24000)
	for range 4 {
		player.Fill(left, right)
		now := player.Now()
		fmt.Printf("bar %d, pick %d\n", now.Bar, now.Pick)
	}
	_ = player.SetTempo(120)
	player.Fill(left, right)
	fmt.Printf("bar %d, pick %d, at %d beats a minute\n", player.Now().Bar, player.Now().Pick, player.Tempo())
	// Output:
	// bar 1, pick 1
	// bar 1, pick 2
	// bar 1, pick 4
	// bar 1, pick 5
	// bar 2, pick 8, at 120 beats a minute
}

func ExampleRender() {
	left, right, err := synth.Render(48000, lesson(), synth.Options{Material: synth.Nylon, CountIn: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f seconds: a bar to count in, two bars, a bar to ring, and the body\n", float64(len(left))/48000)
	fmt.Println(len(left) == len(right))
	// Output:
	// 8.4 seconds: a bar to count in, two bars, a bar to ring, and the body
	// true
}

func ExampleEncode() {
	var file bytes.Buffer
	if err := synth.Encode(&file, lesson(), wav.Format{Rate: 44100}, synth.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s %s, %d bytes\n", file.Bytes()[:4], file.Bytes()[8:12], file.Len())
	fmt.Println(synth.Encode(&file, lesson(), wav.Format{}, synth.Options{Rounds: synth.Endless}))
	// Output:
	// RIFF WAVE, 1134296 bytes
	// rounds, byte 0: "-1": a file has an end; choose how many rounds
}
