package text

// glyph is a letter six half-rows high: each string is one half-row, # is ink.
// Letters a person could take for a digit (B D O S Z) have round corners where
// the digit (8 0 5 2) has square ones.
func glyph(r rune) ([6]string, bool) {
	switch r {
	case '0':
		return [6]string{"###", "# #", "# #", "# #", "# #", "###"}, true
	case '1':
		return [6]string{" # ", "## ", " # ", " # ", " # ", "###"}, true
	case '2':
		return [6]string{"###", "  #", "  #", "###", "#  ", "###"}, true
	case '3':
		return [6]string{"###", "  #", "###", "  #", "  #", "###"}, true
	case '4':
		return [6]string{"# #", "# #", "# #", "###", "  #", "  #"}, true
	case '5':
		return [6]string{"###", "#  ", "###", "  #", "  #", "###"}, true
	case '6':
		return [6]string{"###", "#  ", "###", "# #", "# #", "###"}, true
	case '7':
		return [6]string{"###", "  #", "  #", " # ", " # ", " # "}, true
	case '8':
		return [6]string{"###", "# #", "###", "# #", "# #", "###"}, true
	case '9':
		return [6]string{"###", "# #", "# #", "###", "  #", "###"}, true
	case '.':
		return [6]string{"  ", "  ", "  ", "  ", "##", "##"}, true
	case ',':
		return [6]string{"  ", "  ", "  ", "  ", " #", "# "}, true
	case ':':
		return [6]string{"  ", "##", "  ", "  ", "##", "  "}, true
	case '-', '–', '−':
		return [6]string{"   ", "   ", "###", "   ", "   ", "   "}, true
	case '+':
		return [6]string{"   ", "   ", " # ", "###", " # ", "   "}, true
	case '/':
		return [6]string{"  #", "  #", " # ", " # ", "#  ", "#  "}, true
	case '%':
		return [6]string{"# #", "  #", " # ", " # ", "#  ", "# #"}, true
	case '!':
		return [6]string{"#", "#", "#", "#", " ", "#"}, true
	case '?':
		return [6]string{"###", "  #", " ##", " # ", "   ", " # "}, true
	case '_':
		return [6]string{"   ", "   ", "   ", "   ", "   ", "###"}, true
	case ' ':
		return [6]string{"  ", "  ", "  ", "  ", "  ", "  "}, true
	}
	return letter(r)
}

func letter(r rune) ([6]string, bool) {
	switch r {
	case 'A':
		return [6]string{" ## ", "#  #", "#  #", "####", "#  #", "#  #"}, true
	case 'B':
		return [6]string{"### ", "#  #", "### ", "#  #", "#  #", "### "}, true
	case 'C':
		return [6]string{" ##", "#  ", "#  ", "#  ", "#  ", " ##"}, true
	case 'D':
		return [6]string{"### ", "#  #", "#  #", "#  #", "#  #", "### "}, true
	case 'E':
		return [6]string{"###", "#  ", "## ", "#  ", "#  ", "###"}, true
	case 'F':
		return [6]string{"###", "#  ", "## ", "#  ", "#  ", "#  "}, true
	case 'G':
		return [6]string{" ## ", "#   ", "#   ", "# ##", "#  #", " ## "}, true
	case 'H':
		return [6]string{"#  #", "#  #", "####", "#  #", "#  #", "#  #"}, true
	case 'I':
		return [6]string{"###", " # ", " # ", " # ", " # ", "###"}, true
	case 'J':
		return [6]string{"  #", "  #", "  #", "  #", "# #", " # "}, true
	case 'K':
		return [6]string{"#  #", "# # ", "##  ", "# # ", "#  #", "#  #"}, true
	case 'L':
		return [6]string{"#  ", "#  ", "#  ", "#  ", "#  ", "###"}, true
	case 'M':
		return [6]string{"#   #", "## ##", "# # #", "#   #", "#   #", "#   #"}, true
	case 'N':
		return [6]string{"#  #", "## #", "## #", "# ##", "# ##", "#  #"}, true
	case 'O':
		return [6]string{" ## ", "#  #", "#  #", "#  #", "#  #", " ## "}, true
	case 'P':
		return [6]string{"### ", "#  #", "#  #", "### ", "#   ", "#   "}, true
	case 'Q':
		return [6]string{" ## ", "#  #", "#  #", "#  #", "# # ", " # #"}, true
	case 'R':
		return [6]string{"### ", "#  #", "#  #", "### ", "# # ", "#  #"}, true
	case 'S':
		return [6]string{" ###", "#   ", " ## ", "   #", "   #", "### "}, true
	case 'T':
		return [6]string{"###", " # ", " # ", " # ", " # ", " # "}, true
	case 'U':
		return [6]string{"#  #", "#  #", "#  #", "#  #", "#  #", " ## "}, true
	case 'V':
		return [6]string{"# #", "# #", "# #", "# #", "# #", " # "}, true
	case 'W':
		return [6]string{"#   #", "#   #", "#   #", "# # #", "## ##", "#   #"}, true
	case 'X':
		return [6]string{"#  #", "#  #", " ## ", " ## ", "#  #", "#  #"}, true
	case 'Y':
		return [6]string{"# #", "# #", " # ", " # ", " # ", " # "}, true
	case 'Z':
		return [6]string{"####", "   #", "  # ", " #  ", "#   ", "####"}, true
	}
	return [6]string{}, false
}
