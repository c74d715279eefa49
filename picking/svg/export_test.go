package svg

// Room returns the room that a text needs, in hundredths of a point.
func Room(text string, size int, bold bool) int { return face{size, bold}.room(text) }

// Margin is what stays white on every side of a page.
const Margin = margin
