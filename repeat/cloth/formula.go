package cloth

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"

	"github.com/expr-lang/expr"
	"github.com/expr-lang/expr/ast"
	"github.com/expr-lang/expr/file"
	"github.com/expr-lang/expr/parser"
	"github.com/expr-lang/expr/vm"

	"tsugime/repeat/geom"
)

// A formula is a short expression over the names of a form: a length, a number
// or a condition. It has no loops and no lists, so what it costs is bounded by
// its text.
//
//	2 * (body + tuck + hem)
//	min(overlap, cloth/2 - 2*seam)
//	panels >= 3 ? width : width - mm(20)
type formula struct {
	text    string
	fixed   any // the result where there is no program
	program *vm.Program
}

// values are what names stand for in formulas: a length or an int.
type values map[string]any

// Bounds of a formula.
const (
	maxFormula      = 240 // characters
	maxFormulaNodes = 80
)

// The kinds of results.
var (
	aLength    = reflect.TypeFor[length]()
	aNumber    = reflect.TypeFor[float64]()
	aCondition = reflect.TypeFor[bool]()
)

// reckons reports whether a text adds or multiplies, and so is no length by itself.
func reckons(text string) bool {
	return strings.ContainsAny(text, "*+×÷") || strings.Contains(strings.TrimLeft(text, " -"), "-")
}

// parseFormula reads a formula with a result of a kind over the names that are
// known. A text that is a length by itself ("8 sun", "2.5") is one in unit.
func parseFormula(text string, kind reflect.Type, known values, unit geom.Unit) (formula, error) {
	f := formula{text: text}
	if n := utf8.RuneCountInString(text); n > maxFormula {
		return f, fmt.Errorf("%d characters; keep a formula to %d", n, maxFormula)
	}
	if kind == aLength && !reckons(text) {
		if l, err := geom.ParseLength(text, unit); err == nil {
			if l.Abs() > formulaReach {
				return f, errReach
			}
			f.fixed = length{l}
			return f, nil
		}
	}
	tree, err := parser.Parse(text)
	if err != nil {
		return f, formulaError(text, err)
	}
	plain := plainWords{}
	ast.Walk(&tree.Node, &plain)
	if plain.foreign != "" {
		return f, fmt.Errorf("%q holds %s; use names, numbers, + - * /, comparisons, ?: and min, max, mm, cm, bu, sun, shaku", text, plain.foreign)
	}
	options := append([]expr.Option{expr.Env(map[string]any(known)), expr.AsKind(kind.Kind())}, formulaWords...)
	if f.program, err = expr.Compile(text, options...); err != nil {
		return f, formulaError(text, err)
	}
	return f, nil
}

// result returns what f is for the values.
func (f formula) result(v values) (any, error) {
	if f.program == nil {
		return f.fixed, nil
	}
	out, err := vm.Run(f.program, map[string]any(v))
	if err != nil {
		return nil, formulaError(f.text, err)
	}
	return out, nil
}

// length returns the length that f is for the values.
func (f formula) length(v values) (geom.Length, error) {
	out, err := f.result(v)
	if err != nil {
		return 0, err
	}
	l, ok := out.(length)
	if !ok {
		return 0, fmt.Errorf("%q is no length; write one, such as mm(12)", f.text)
	}
	return l.nm, nil
}

// formulaError says in one line what the evaluator found.
func formulaError(text string, err error) error {
	message := err.Error()
	var found *file.Error
	if errors.As(err, &found) {
		message = found.Message
	}
	message = strings.NewReplacer("cloth.length", "length", "struct", "a length", "\n", " ").Replace(message)
	return fmt.Errorf("%q can't be worked out: %s", text, message)
}

// plainWords notes the first thing in a formula that formulas don't have.
type plainWords struct{ foreign string }

// Visit is called for every part of the expression.
func (p *plainWords) Visit(n *ast.Node) {
	ok, what := true, ""
	switch n := (*n).(type) {
	case *ast.IdentifierNode, *ast.IntegerNode, *ast.FloatNode, *ast.ConditionalNode:
	case *ast.UnaryNode:
		ok, what = n.Operator == "not" || n.Operator == "!" || n.Operator == "-", n.Operator
	case *ast.BinaryNode:
		ok, what = strings.Contains(" + - * / < <= > >= == != and or && || ", " "+n.Operator+" "), n.Operator
	case *ast.CallNode:
		_, ok = n.Callee.(*ast.IdentifierNode)
		what = "a call"
	case *ast.BuiltinNode:
		ok, what = n.Name == "min" || n.Name == "max", n.Name
	default:
		ok, what = false, strings.TrimSuffix(reflect.TypeOf(n).Elem().Name(), "Node")
	}
	if !ok && p.foreign == "" {
		p.foreign = strings.ToLower(what)
	}
}
