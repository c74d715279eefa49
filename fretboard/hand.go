package fretboard

// A Hand is a way of holding the instrument.
type Hand uint8

// The three ways of holding. On a RightHanded and on a LeftRestrung guitar
// string 1 is nearest the floor. A LeftTurned guitar is a right-handed one
// turned over without restringing: string 1 is uppermost.
const (
	RightHanded Hand = iota
	LeftRestrung
	LeftTurned
)

var handNames = [...]string{"right", "left", "turned"}

// String returns right, left or turned.
func (h Hand) String() string { return NameOf(handNames[:], int(h)) }

// ParseHand reads right, left or turned.
func ParseHand(text string) (Hand, error) {
	i, err := ParseName("hand", handNames[:], text)
	return Hand(i), err
}

// Toward returns the step in string numbers that a down-stroke, toward the
// floor, takes from one string to the next: -1, or 1 on a turned guitar.
func (h Hand) Toward() StringNumber {
	if h == LeftTurned {
		return 1
	}
	return -1
}

// Mirrored reports whether chord boxes, which show the neck upright from the
// front, are drawn with string 1 on the left. Only restringing moves it there:
// a turned guitar stood upright is a right-handed one again.
func (h Hand) Mirrored() bool { return h == LeftRestrung }
