package main

import (
	"fmt"
	"strings"

	"drainboard/model"

	"github.com/spf13/cobra"
)

// kindNames lists the kinds of entries for a refusal.
func kindNames() string {
	var names []string
	for _, k := range model.Kinds() {
		names = append(names, string(k))
	}
	return strings.Join(names, ", ")
}

// fieldsOf writes the fields of a kind as they are typed, optional ones in
// brackets.
func fieldsOf(fact model.Fact) string {
	var words []string
	for _, f := range fact.Fields() {
		word := f.Name + "=" + sample(f)
		if !f.Need {
			word = "[" + word + "]"
		}
		words = append(words, word)
	}
	return strings.Join(words, " ")
}

// sample shows how a field's value is written.
func sample(f model.Field) string {
	switch f.Type {
	case model.Word:
		return strings.Join(f.Words, "|")
	case model.Number:
		return "1.5"
	case model.Whole:
		return "12"
	case model.Flag:
		return "true|false"
	case model.HatchDay:
		return "2026-11-08"
	case model.Numbers, model.Wholes:
		return "1,2,3"
	case model.PerAlga:
		return "iso:0.35"
	case model.Legs:
		return "C5:C1,C2:C5"
	case model.Changes:
		return "field:value"
	}
	return strings.ToUpper(f.Name)
}

// kindsHelp is the table of kinds and fields in the help.
func kindsHelp() string {
	var b strings.Builder
	b.WriteString("Kinds and their fields, optional ones in brackets:")
	for _, k := range model.Kinds() {
		fact, _ := model.NewFact(k)
		fmt.Fprintf(&b, "\n  %-11s %s", k, fieldsOf(fact))
	}
	return b.String()
}

// completeEntry offers kinds, then the fields of the kind typed.
func completeEntry(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var words []string
	if len(args) == 0 {
		for _, k := range model.Kinds() {
			words = append(words, string(k))
		}
		return words, cobra.ShellCompDirectiveNoFileComp
	}
	fact, ok := model.NewFact(model.Kind(args[0]))
	if !ok {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	for _, f := range fact.Fields() {
		words = append(words, f.Name+"=")
	}
	return words, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
