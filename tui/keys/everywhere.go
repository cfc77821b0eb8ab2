package keys

// Actions that mean the same on every screen. The root handles Help, Find,
// Undo and Stop; a screen handles Back itself where it has a level to leave
// and hands it to the root otherwise.
const (
	Help Action = "help"
	Back Action = "back"
	Find Action = "find"
	Undo Action = "undo"
	Stop Action = "stop"
)

// Everywhere is the table of the keys that work on every screen. While text is
// typed only Help, Back and Stop do, and help only by F1.
func Everywhere() Table {
	return Table{Title: "Everywhere", Bindings: []Binding{
		{Action: Help, Keys: []string{"?", "f1"}, Short: "help", Long: "Show what the keys do here."},
		{Action: Back, Keys: []string{"esc"}, Short: "back", Long: "Go back one level. Nothing typed is thrown away without a question."},
		{Action: Find, Keys: []string{"/"}, Short: "find", Long: "Go to a tank by its name."},
		{Action: Undo, Keys: []string{"u"}, Short: "undo", Long: "Take the last entry back by a correction; both stay readable."},
		{Action: Stop, Keys: []string{"ctrl+c"}, Long: "Press twice to leave the program from anywhere. What was saved stays saved."},
	}}
}
