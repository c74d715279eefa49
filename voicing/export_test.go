package voicing

// The prices of a grip, for the tests that price by the words of Cost.
const (
	FingerPrice         = fingerPrice
	CurlPrice           = curlPrice
	LittlePrice         = littlePrice
	SpreadPrice         = spreadPrice
	SplayShare          = splayShare
	RestTenths          = restTenths
	BarrePrice          = barrePrice
	CrossingPrice       = crossingPrice
	DampedPrice         = dampedPrice
	SlackPrice          = slackPrice
	TipPrice            = tipPrice
	OtherBarrePrice     = otherBarrePrice
	OtherCrossingPrice  = otherCrossingPrice
	LittleCrossingPrice = littleCrossingPrice
)
