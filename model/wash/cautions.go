package wash

// AcidCautions are the lines that stand beside every figure about acid.
func AcidCautions() []string {
	return append([]string{
		"Label and safety data sheet first: where they differ from this, they hold.",
		"Take the strength from this bottle's label; shop acid runs from 14 to 37 %.",
		"Goggles and face shield, acid-proof gloves, apron; fresh air; eyewash at hand.",
		"Water first, then the acid, slowly. Acid into water, never the reverse.",
		"Plastic bins only: acid eats zinc, aluminium, brass and copper, giving hydrogen.",
		"Neutralise in small portions in fresh air (it foams), then test the pH.",
	}, shared()...)
}

// BleachCautions are the lines that stand beside every figure about bleach.
func BleachCautions() []string {
	return append([]string{
		"Label and safety data sheet first: where they differ from this, they hold.",
		"Take the strength from this bottle's label; old bleach is weaker than it says.",
		"Goggles, gloves, apron; fresh air; eyewash at hand.",
		"Clean off dirt before, neutralise after, and test that no chlorine is left.",
	}, shared()...)
}

// shared are the cautions that hold for both.
func shared() []string {
	return []string{
		"Never acid and bleach (hypochlorite) in one bin, tank or drain: chlorine gas.",
		"Between one and the other rinse everything with plenty of fresh water.",
		"Chlorine smell: leave at once, keep others out, call for help; do not treat it.",
		"In the eyes or on skin: rinse at least 15 minutes, and get medical help.",
		"Dispose of it by local rules, with licensed help where the law asks for it.",
	}
}
