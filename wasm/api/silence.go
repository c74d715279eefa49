//go:build sheets || drawings

package api

// players are none here.
type players struct{}

// Fill refuses to play.
func (l *Library) Fill(int, []float32, []float32) string {
	return refusal(requestFault("player", "nothing is played here"))
}
