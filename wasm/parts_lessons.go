//go:build js && wasm && lessons

package main

import "weft.example/wasm/api"

// parts are what a page needs to show and play a part: weft.wasm.
var parts = []api.Part{api.Lessons, api.Shapes, api.Sounds}
