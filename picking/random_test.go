package picking

import "math/rand/v2"

// random returns a source of chance that a seed decides.
func random(seed int64) *rand.Rand { return rand.New(rand.NewPCG(uint64(seed), 0)) }
