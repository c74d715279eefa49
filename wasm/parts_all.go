//go:build js && wasm && !lessons && !sheets && !drawings

package main

import "weft.example/wasm/api"

// parts are everything, for whoever wants one large file.
var parts = []api.Part{api.Lessons, api.Shapes, api.Readings, api.Scores, api.Drawings, api.Sounds}
