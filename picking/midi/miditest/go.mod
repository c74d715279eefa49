module weft.example/picking/midi/miditest

go 1.26.0

require (
	gitlab.com/gomidi/midi/v2 v2.3.23
	weft.example v0.0.0
)

replace weft.example => ../../..
