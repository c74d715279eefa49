package words

// A language holds all that this package says. Chords, shapes and remarks come
// in English from the packages that know them. {1} stands for the first
// argument, and so on; the order is the language's own.
type language struct {
	tag     string // BCP 47
	phrases [phraseCount]string
	notes   [7]noteName // by halves, from the whole note
}

type noteName struct{ one, bare, many string }

// A phrase is a sentence, or a part of one, in whatever language. Of two that
// end in One and Many, count chooses. Hands, traditions, mouldings and
// accidentals stand in the order of their values, and are reached by adding.
type phrase int

const (
	untitled phrase = iota
	aboutPart
	aboutTime
	aboutInstrument
	aboutStrokes
	aboutForm
	theChords
	theBars

	listAnd
	spanTo
	oneBar
	manyBars
	sharp
	doubleSharp
	tripleSharp
	quadrupleSharp
	flat
	doubleFlat
	tripleFlat
	quadrupleFlat
	dotted
	inTriplets
	ticks
	millimetres

	meterIs
	tempoIs
	beatIs
	countOne
	countMany
	countIs
	stringOne
	stringMany
	tuningIs
	openString
	capoAt
	noCapo
	rightHand
	leftHand
	turnedHand
	downToward
	downFloor
	onBack
	towardNext
	economy
	alternate
	restStroke
	jig
	byContour
	byBass
	byShift
	ringOn
	restIs
	holdIs
	turnIs
	insideIs
	returnIs
	ownIs
	barOne
	barMany
	formLoop
	formOnce
	formRings
	loopStroke
	repeatSame
	repeatBut
	travelOne
	travelMany
	travelLoop
	travelIs

	shapeNumber
	soundsAs
	carriesRoot
	carriesSlash
	soundsLowest
	firstIn
	wayIs
	figureWayIs
	wayAs
	figureWayAs
	inBars
	theFigure
	figureNumber
	stepFrom
	stepRound
	lossIs
	goesOn
	goesBack
	stays

	chordNamed
	chordFigure
	chordFrom
	oneBeat
	manyBeats
	oneCount
	manyCounts
	andAt
	partOf
	fromPart
	pickIs
	openFret
	atFret
	down
	up
	anyStroke
	turning
	crossing
	returning
	ownStroke
	holdAt
	restAt
	asBars
	asBarsTimes

	slotOne
	slotMany
	slotsShare
	slotIs
	rootIs
	startOn
	onOne
	onMany
	backOne
	backMany
	sameAgain
	overTo
	onHome
	backHome
	theRoot
	stringPlace
	withStroke
	downStroke
	upStroke
	ringOne
	ringMany
	restOne
	restMany
	figureBar
	figureAgain

	phraseCount
)

var english = language{
	tag: "en",
	notes: [...]noteName{
		{"a whole note", "whole note", "whole notes"},
		{"a half note", "half note", "half notes"},
		{"a quarter note", "quarter note", "quarter notes"},
		{"an eighth note", "eighth note", "eighth notes"},
		{"a sixteenth note", "sixteenth note", "sixteenth notes"},
		{"a thirty second note", "thirty second note", "thirty second notes"},
		{"a sixty fourth note", "sixty fourth note", "sixty fourth notes"},
	},
	phrases: [...]string{
		untitled:        "A part for plectrum",
		aboutPart:       "About this part",
		aboutTime:       "Time",
		aboutInstrument: "Instrument",
		aboutStrokes:    "Figure and strokes",
		aboutForm:       "Form",
		theChords:       "Chords",
		theBars:         "Bars",

		listAnd:        "{1} and {2}",
		spanTo:         "{1} to {2}",
		oneBar:         "bar {1}",
		manyBars:       "bars {1}",
		sharp:          "{1} sharp",
		doubleSharp:    "{1} double sharp",
		tripleSharp:    "{1} triple sharp",
		quadrupleSharp: "{1} quadruple sharp",
		flat:           "{1} flat",
		doubleFlat:     "{1} double flat",
		tripleFlat:     "{1} triple flat",
		quadrupleFlat:  "{1} quadruple flat",
		dotted:         "a dotted {1}",
		inTriplets:     "{1} in triplets",
		ticks:          "{1} ticks, at 480 to a quarter note",
		millimetres:    "millimetres",

		meterIs:    "Meter: {1} over {2}.",
		tempoIs:    "Tempo: {1} beats a minute.",
		beatIs:     "A beat is {1}.",
		countOne:   "A bar is counted as {1}.",
		countMany:  "A bar is counted in {1}.",
		countIs:    "A count is {1}.",
		stringOne:  "{1} string.",
		stringMany: "{1} strings.",
		tuningIs:   "Tuning: {1}.",
		openString: "String {1} open: {2}, octave {3}.",
		capoAt:     "Capo: fret {1}. Frets are counted from it. Open means at the capo.",
		noCapo:     "No capo.",
		rightHand:  "Hand: right handed.",
		leftHand:   "Hand: left handed, strung for the left hand.",
		turnedHand: "Hand: left handed, a right handed instrument turned over. String 1 is uppermost.",
		downToward: "Down is toward the floor and string {1}. Up is toward string {2}.",
		downFloor:  "Down is toward the floor. Up is away from it.",
		onBack:     "On means toward string 1. Back means toward string {1}.",
		towardNext: "Strokes: each goes toward the next string.",
		economy:    "Strokes: economy. The pick comes onto a new string and goes on the same way.",
		alternate:  "Strokes: alternate. Down and up take turns, slot by slot from the bar line.",
		restStroke: "Strokes: rest stroke. The first stroke on every new string is down.",
		jig:        "Strokes: jig. Down, up, down in each group of 3.",
		byContour:  "Fit: contour. On each chord the figure keeps its way on and back over the strings.",
		byBass:     "Fit: bass. Only the root notes of the figure move to the start string.",
		byShift:    "Fit: shift. The whole figure moves with its root.",
		ringOn:     "A note rings until its string is plucked again or let go.",
		restIs:     "Rest means that all strings are silent.",
		holdIs:     "Hold means that nothing is plucked and the strings ring on.",
		turnIs:     "Turnaround means that the pick goes back the way it came.",
		insideIs:   "Inside crossing means that the pick has come back between the string before and this one.",
		returnIs:   "Return crossing means that the pick has come back over the string before and this one.",
		ownIs:      "Own stroke means that the figure asks for this stroke.",
		barOne:     "{1} bar.",
		barMany:    "{1} bars.",
		formLoop:   "Form: a loop. The end leads back to bar {1}.",
		formOnce:   "Form: once through.",
		formRings:  "The last notes ring on for a bar.",
		loopStroke: "The last stroke goes toward string {1}, the first string of the loop.",
		repeatSame: "{1}: a repeat of {2}.",
		repeatBut:  "{1}: a repeat of {2}, with changes in {3}.",
		travelOne:  "Between strokes the pick moves {1} string spacing.",
		travelMany: "Between strokes the pick moves {1} string spacings.",
		travelLoop: "The way round the loop counts too.",
		travelIs:   "That is {1} millimetres.",

		shapeNumber:  "{1}, shape {2}",
		soundsAs:     "With the capo it sounds as {1}.",
		carriesRoot:  "Start on string {1}. It carries the root, {2}.",
		carriesSlash: "Start on string {1}. It carries the bass that the chord names, {2}.",
		soundsLowest: "Start on string {1}. The root does not sound. This string sounds lowest.",
		firstIn:      "First played in {1}.",
		wayIs:        "The figure here: {1}",
		figureWayIs:  "Figure {2} here: {1}",
		wayAs:        "The figure runs as on {1}.",
		figureWayAs:  "Figure {2} runs as on {1}.",
		inBars:       "{1}: {2}.",
		theFigure:    "the figure",
		figureNumber: "figure {1}",
		stepFrom:     "from note {1} to note {2}",
		stepRound:    "from note {1} round to note {2}",
		lossIs:       "{1} {2} {3}, but here it {4}",
		goesOn:       "goes on",
		goesBack:     "goes back",
		stays:        "stays on its string",

		chordNamed:  "chord {1}",
		chordFigure: "{1}, figure {2}",
		chordFrom:   "{1}, from {2}",
		oneBeat:     "beat {1}",
		manyBeats:   "beats {1}",
		oneCount:    "count {1}",
		manyCounts:  "counts {1}",
		andAt:       "and",
		partOf:      "part {1} of {2}",
		fromPart:    "{1}, {2}",
		pickIs:      "{1}: string {2}, {3}, {4}.",
		openFret:    "open",
		atFret:      "fret {1}",
		down:        "down",
		up:          "up",
		anyStroke:   "any stroke",
		turning:     "{1}, turnaround",
		crossing:    "{1}, inside crossing",
		returning:   "{1}, return crossing",
		ownStroke:   "{1}, own stroke",
		holdAt:      "{1}: hold.",
		restAt:      "{1}: rest.",
		asBars:      "As {1}.",
		asBarsTimes: "As {1}, {2} times.",

		slotOne:     "{1} slot.",
		slotMany:    "{1} slots.",
		slotsShare:  "The slots of a bar share it evenly.",
		slotIs:      "A slot is {1}.",
		rootIs:      "The root is on string {1}.",
		startOn:     "start on {1}",
		onOne:       "{1} string on",
		onMany:      "{1} strings on",
		backOne:     "{1} string back",
		backMany:    "{1} strings back",
		sameAgain:   "the same string again",
		overTo:      "over to {1}",
		onHome:      "on to {1}",
		backHome:    "back to {1}",
		theRoot:     "the root",
		stringPlace: "string {1}",
		withStroke:  "{1}, with {2}",
		downStroke:  "a down stroke",
		upStroke:    "an up stroke",
		ringOne:     "let it ring for {1} slot",
		ringMany:    "let it ring for {1} slots",
		restOne:     "rest for {1} slot",
		restMany:    "rest for {1} slots",
		figureBar:   "bar {1}",
		figureAgain: "then from the start again",
	},
}
