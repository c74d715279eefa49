// Package song reads a song and its settings from texts under names that the
// example programs share: they are flags of one and lines in the files of
// another.
package song

import (
	"strings"

	"weft.example/fretboard"
)

// A Key is the name of a text, what it usually is, and help in which
// backquotes mark what the text is.
type Key struct {
	Name, Usual, Help string
	Truth             bool // yes or no
}

// Keys are all the keys. Chords and figure have no usual text.
var Keys = []Key{
	{Name: "title", Help: "`title` of the song"},
	{Name: "chords", Help: "`chart` of bars between |; :beats, =shape and @figure may follow a chord"},
	{Name: "figure", Help: "picking `figure`: string numbers, - to let ring, . to rest, d or u for your own stroke; several with ; (default one that suits)"},
	{Name: "meter", Usual: "4/4", Help: "time `signature`"},
	{Name: "tempo", Usual: "80", Help: "`beats` a minute, the beat being the meter's, 10 to 400"},
	{Name: "tuning", Usual: "standard", Help: "`name or notes` of the open strings, the thickest first: " + strings.Join(fretboard.TuningNames(), ", ")},
	{Name: "capo", Usual: "0", Help: "`fret` of the capo"},
	{Name: "hand", Usual: "right", Help: "`way` of holding: right, left (restrung) or turned (not restrung)"},
	{Name: "strokes", Usual: "toward-next", Help: "`tradition`: toward-next, economy, alternate, rest-stroke or jig"},
	{Name: "fit", Usual: "contour", Help: "`moulding` of the figure to the strings that sound: contour, bass or shift"},
	{Name: "change", Usual: "restart", Help: "what a figure does when the chord changes: `restart or carry`"},
	{Name: "fill", Usual: "again", Help: "what a figure does that ends before its chord: `again or ring`"},
	{Name: "spelling", Usual: "english", Help: "`names` of the notes in chords that come in and on sheets: english, german (H, and B for B flat; a for Am) or mixed (H, and Bb for B flat); all else is English"},
	{Name: "turn", Usual: "no", Help: "take the figures in turn, one a chord", Truth: true},
	{Name: "once", Usual: "no", Help: "play once and let the last chord ring, rather than loop", Truth: true},
}

// Texts are the texts of a song by their keys. One that is missing is as usual,
// and a figure that is missing is [BuiltInFigure].
type Texts map[string]string

func (t Texts) get(name string) string {
	if text, given := t[name]; given {
		return text
	}
	for _, key := range Keys {
		if key.Name == name {
			return key.Usual
		}
	}
	panic("song: no key " + name)
}
