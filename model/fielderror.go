package model

import "fmt"

// FieldError says which field is wrong and what would be right.
type FieldError struct {
	Field   string // the name as on disk and on the command line
	Problem string // what is wrong and what would be right, in one line
}

// Error reads "field: problem".
func (e *FieldError) Error() string { return e.Field + ": " + e.Problem }

func wrong(field, format string, args ...any) *FieldError {
	return &FieldError{field, fmt.Sprintf(format, args...)}
}
