// Package api is the library as a program in another language sees it: requests
// and answers in JSON, files and sound in bytes. It is plain Go, and knows
// nothing of browsers; package main one folder up hands it to JavaScript. The
// file weft.d.ts there documents every request and every answer.
//
// A request is an object: the version, what is asked, and the request proper:
//
//	{"version": 1, "ask": "names", "request": {"shape": "x32010"}}
//
// An answer has the version and either the result or an error, which says what
// is wrong and where:
//
//	{"version": 1, "ok": true, "result": {...}}
//	{"version": 1, "ok": false, "error": {"code": "syntax", "message": "...", "field": "shape", "place": {...}}}
//
// Requests are read strictly, and whatever they hold there is an answer: a panic
// becomes an error of code internal.
package api

import (
	"strconv"

	"weft.example/wasm/internal/jsontext"
)

// Version is the version of the requests and answers.
const Version = 1

// MaxAnswer is the most bytes that an answer may have.
const MaxAnswer = 64 << 20

// A Library answers requests. It holds the players that are open and nothing
// else that changes. It is not for use by two goroutines at once.
type Library struct {
	operations map[string]operation
	options    map[string]optionReader // of each format that can be written
	players    players
}

// A Part is a group of operations. A program that wants only some of them stays
// smaller: what nobody asks for is not linked. The tags lessons, sheets and
// drawings leave out even the imports of what a file for the browser lacks.
type Part func(l *Library)

// New returns a library with the operations of the parts, none where two parts
// have one alike but the later's.
func New(parts ...Part) *Library {
	l := &Library{operations: map[string]operation{}, options: map[string]optionReader{}}
	for _, part := range parts {
		part(l)
	}
	return l
}

// A reply is what came of a request: the members of its result, and the bytes of
// a file.
type reply struct {
	members func(w *jsontext.Writer)
	bytes   []byte
}

// An operation carries out a request.
type operation func(l *Library, f *fields) (reply, error)

// Answer answers a request. The answer is always a JSON object. The bytes are
// those of the file asked for, and none of anything else.
func (l *Library) Answer(request string) (answer string, file []byte) {
	defer func() {
		if r := recover(); r != nil {
			answer, file = refusal(internalFault(r)), nil
		}
	}()
	ask, f, err := readRequest(request)
	if err != nil {
		return refusal(err), nil
	}
	do := l.operations[ask]
	if do == nil {
		return refusal(requestFault("ask", "nothing of that name can be asked here")), nil
	}
	done, err := do(l, f)
	if err != nil {
		return refusal(l.mended(ask, f.value, err)), nil
	}
	return success(done.members), done.bytes
}

// readRequest reads what surrounds a request.
func readRequest(text string) (ask string, request *fields, err error) {
	v, err := jsontext.Read(text)
	if err != nil {
		return "", nil, requestFault("", "the request is no JSON: "+err.Error())
	}
	f := newFields(v)
	if version, ok := f.whole("version"); ok && version != Version {
		f.refuse("version", "this library answers version "+strconv.Itoa(Version))
	}
	f.need("version")
	ask, _ = f.text("ask")
	f.need("ask")
	request = f.object("request")
	f.done()
	request.path = "" // fields are told as they stand in the request proper
	return ask, request, f.state.err
}

// success writes an answer with its result.
func success(members func(w *jsontext.Writer)) string {
	w := jsontext.Writer{Limit: MaxAnswer}
	w.Object("", func() {
		w.Int("version", Version)
		w.Bool("ok", true)
		w.Object("result", func() { members(&w) })
	})
	if w.Over() {
		return refusal(requestFault("", "the answer would have more than "+strconv.Itoa(MaxAnswer)+" bytes"))
	}
	return string(w.Bytes())
}

// refusal writes an answer with its error.
func refusal(err error) string {
	var w jsontext.Writer
	w.Object("", func() {
		w.Int("version", Version)
		w.Bool("ok", false)
		faultOf(err).write(&w, "error")
	})
	return string(w.Bytes())
}
