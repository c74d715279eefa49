//go:build js && wasm && sheets

package main

import "weft.example/wasm/api"

// parts are what writes sheets to read, and scores: sheets.wasm.
var parts = []api.Part{api.Readings, api.Scores}
