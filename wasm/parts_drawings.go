//go:build js && wasm && drawings

package main

import "weft.example/wasm/api"

// parts are what draws sheets, and writes notes for sequencers: drawings.wasm.
var parts = []api.Part{api.Drawings}
