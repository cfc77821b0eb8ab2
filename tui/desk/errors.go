package desk

import "errors"

// errNothing is returned where no entry is left to undo.
var errNothing = errors.New("there is no entry to undo")
