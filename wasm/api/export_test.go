package api

// Broken is a part with an operation that panics.
func Broken(l *Library) {
	l.operations["broken"] = func(*Library, *fields) (reply, error) {
		var none []int
		return reply{bytes: []byte{byte(none[len(l.options)])}}, nil
	}
}
