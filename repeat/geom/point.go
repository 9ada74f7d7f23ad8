package geom

import "math"

// A Point is a place, or the way from one place to another.
type Point struct{ X, Y Length }

// PtMM returns the point at x, y millimetres, rounded to the nanometre.
func PtMM(x, y float64) Point { return Point{MM(x), MM(y)} }

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the way from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p taken n times.
func (p Point) Times(n int) Point { return Point{p.X * Length(n), p.Y * Length(n)} }

// Neg returns the way back.
func (p Point) Neg() Point { return Point{-p.X, -p.Y} }

// Cross returns p.X·q.Y − p.Y·q.X in square nanometres: twice the signed area of
// the triangle 0, p, q. It is exact while every coordinate is within MaxSpan.
func (p Point) Cross(q Point) int64 { return int64(p.X)*int64(q.Y) - int64(p.Y)*int64(q.X) }

// Dot returns p.X·q.X + p.Y·q.Y in square nanometres, exact within MaxSpan.
func (p Point) Dot(q Point) int64 { return int64(p.X)*int64(q.X) + int64(p.Y)*int64(q.Y) }

// Norm returns the distance of p from the origin in nanometres.
func (p Point) Norm() float64 { return math.Hypot(float64(p.X), float64(p.Y)) }

// Distance returns the distance between p and q.
func (p Point) Distance(q Point) Length { return Length(math.Round(p.Sub(q).Norm())) }

// Orient is positive where c lies to the right of the way from a to b as seen
// on the sheet (y down: a turn by a positive angle), negative to the left, and
// zero where the three are in line. Exact within MaxSpan.
func Orient(a, b, c Point) int64 { return b.Sub(a).Cross(c.Sub(a)) }

// Less orders points by y, then x: the way a cutter reads a sheet.
func (p Point) Less(q Point) bool { return p.Y < q.Y || p.Y == q.Y && p.X < q.X }
