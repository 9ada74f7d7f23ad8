package board

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"tsugime/export/raster"
)

// The spectrum of a picture is held against that of the ground as its footprint leaves
// it, which is painted many times finer. What the fine picture has of waves that the
// coarse one can hold is in the design; what else the coarse one has is false.

const (
	spectrumSide = 64 // pixels
	finer        = 4  // places of the fine picture to a pixel
	longWave     = 5  // pixels; the eye takes waves from here on for bands
	falseBand    = 2  // levels of 255 that a false band may have, to either side
	falseTone    = 1  // where holes can't be told apart, a wave of any length
)

// falseWaves returns the largest false band in a picture of the ground, and the largest
// false wave of any length, in levels to either side.
func falseWaves(cover []uint8, g *plainGround, v raster.View) (band, wave float64) {
	const n = spectrumSide
	seen := make([]float64, n*n)
	for i, c := range cover {
		seen[i] = float64(c)
	}
	a, b := spectrum(seen, n, 1), spectrum(g.through(v), n*finer, finer)
	for j := -n / 2; j < n/2; j++ {
		for i := -n / 2; i < n/2; i++ {
			across, along := float64(i)/n, float64(j)/n
			f := math.Hypot(across, along)
			// Waves of two pixels are shown as themselves and by the window as their neighbours.
			if f == 0 || math.Max(math.Abs(across), math.Abs(along)) > 0.45 {
				continue
			}
			off := 2 * cmplx.Abs(a[around(j, n)*n+around(i, n)]-b[around(j, n*finer)*n*finer+around(i, n*finer)])
			wave = math.Max(wave, off)
			if f <= 1.0/longWave {
				band = math.Max(band, off)
			}
		}
	}
	return band, wave
}

func around(i, n int) int { return (i + n) % n }

// through returns the ground as the footprint leaves it, four places to a pixel, 0 to 255.
func (g *plainGround) through(v raster.View) []float64 {
	reach, _, summed := footprint(g.ground, v.PxPerMM)
	// So fine that a place holds less than a quarter of the way from hole to hole, as far as that goes.
	fine := finer
	for g.least()*v.PxPerMM*float64(fine) < 4 && fine < 32 {
		fine *= 2
	}
	margin := int(math.Ceil(reach)) + 1
	side := (spectrumSide + 2*margin) * fine
	p := raster.NewPlane(side, side)
	g.ground.Paint(p, raster.View{
		X: v.X - float64(margin)/v.PxPerMM, Y: v.Y - float64(margin)/v.PxPerMM, PxPerMM: v.PxPerMM * float64(fine),
	}, raster.Lay{})
	open := make([]float32, side*side)
	for i, c := range p.Cover {
		open[i] = float32(c)
	}
	for ; fine > 2*finer; fine, side = fine/2, side/2 {
		open = halved(open, side)
	}
	const n = spectrumSide * finer
	taps := make([][]float64, n)
	from := make([]int, n)
	for m := range taps {
		at := float64(margin) + 0.5 + float64(m)/finer // pixels
		lo, hi := int(math.Floor((at-reach)*float64(fine))), int(math.Ceil((at+reach)*float64(fine)))
		from[m] = lo
		for i := lo; i < hi; i++ {
			to := func(i int) float64 { return summed(math.Min(math.Max(float64(i)/float64(fine)-at, -reach), reach)) }
			taps[m] = append(taps[m], to(i+1)-to(i))
		}
	}
	half := make([]float64, side*n)
	for y := range side {
		for m, by := range taps {
			sum := 0.0
			for i, c := range open[y*side+from[m]:][:len(by)] {
				sum += by[i] * float64(c)
			}
			half[y*n+m] = sum
		}
	}
	out := make([]float64, n*n)
	for m, by := range taps {
		for i, w := range by {
			for x, h := range half[(from[m]+i)*n:][:n] {
				out[m*n+x] += w * h
			}
		}
	}
	return out
}

// halved returns a square picture at half as many places each way. Each weighs four, so
// that no wave too short for it is left; of those that the picture keeps it takes less
// than half a hundredth.
func halved(of []float32, side int) []float32 {
	half := side / 2
	across, out := make([]float32, side*half), make([]float32, half*half)
	at := func(i int) int { return min(max(i, 0), side-1) }
	for y := range side {
		row := of[y*side:][:side]
		for x := range half {
			across[y*half+x] = (row[at(2*x-1)] + 3*(row[2*x]+row[2*x+1]) + row[at(2*x+2)]) / 8
		}
	}
	for y := range half {
		a, b := across[at(2*y-1)*half:][:half], across[2*y*half:][:half]
		c, d := across[(2*y+1)*half:][:half], across[at(2*y+2)*half:][:half]
		for x := range half {
			out[y*half+x] = (a[x] + 3*(b[x]+c[x]) + d[x]) / 8
		}
	}
	return out
}

// least is about how far it is from hole to hole across or along, millimetres.
func (g *plainGround) least() float64 {
	cell := math.Abs(g.a.X.MM()*g.b.Y.MM() - g.a.Y.MM()*g.b.X.MM())
	across, along := 0.0, 0.0
	for _, b := range g.boxes {
		across, along = across+b.Width().MM(), along+b.Height().MM()
	}
	return math.Min(math.Sqrt(cell/float64(len(g.boxes))), cell/math.Max(across, along))
}

// spectrum returns the spectrum of a square picture, n places wide and per of them to a
// pixel, under a window whose side waves are below 1e-4 of any wave (F. J. Harris, On the
// Use of Windows for Harmonic Analysis, Proc. IEEE 66, 1978, table 1: four terms of
// Blackman and Harris, −92 dB). A wave of amplitude 1 has a peak of a half.
func spectrum(picture []float64, n, per int) []complex128 {
	window, all := make([]float64, n), 0.0
	for i := range window {
		a := 2 * math.Pi * (float64(i)/float64(per) + 0.5) / float64(n/per)
		window[i] = 0.35875 - 0.48829*math.Cos(a) + 0.14128*math.Cos(2*a) - 0.01168*math.Cos(3*a)
		all += window[i]
	}
	mean := 0.0
	for i, v := range picture {
		mean += v * window[i%n] * window[i/n] / all / all
	}
	s := make([]complex128, n*n)
	for i, v := range picture {
		s[i] = complex((v-mean)*window[i%n]*window[i/n]/all/all, 0)
	}
	column, turns := make([]complex128, n), make([]complex128, n)
	for k := range turns {
		turns[k] = cmplx.Rect(1, -2*math.Pi*float64(k)/float64(n))
	}
	for y := range n {
		transform(s[y*n:(y+1)*n], turns)
	}
	for x := range n {
		for y := range n {
			column[y] = s[y*n+x]
		}
		transform(column, turns)
		for y := range n {
			s[y*n+x] = column[y]
		}
	}
	return s
}

// transform is the discrete Fourier transform in place; the length is a power of two.
func transform(a []complex128, turns []complex128) {
	n := len(a)
	for i, j := 1, 0; i < n; i++ {
		bit := n >> 1
		for ; j&bit != 0; bit >>= 1 {
			j ^= bit
		}
		if j ^= bit; i < j {
			a[i], a[j] = a[j], a[i]
		}
	}
	for size := 2; size <= n; size *= 2 {
		for from := 0; from < n; from += size {
			low, high := a[from:from+size/2], a[from+size/2:from+size]
			for k, u := range low {
				t := turns[k*n/size] * high[k]
				low[k], high[k] = u+t, u-t
			}
		}
	}
}

// What the window's painter shows of every starter, at forty zooms, has no band that
// isn't in the design.
func TestAPictureHasNoBandThatIsNotInTheDesign(t *testing.T) {
	inTurn(starterGrounds(t), func(i int, g *plainGround) {
		r := rand.New(rand.NewPCG(uint64(i), 8))
		var p Painter
		worst, at, tone := 0.0, 0.0, 0.0
		for _, zoom := range trueZooms(r) {
			v := raster.View{X: 300*r.Float64() - 150, Y: 300*r.Float64() - 150, PxPerMM: zoom}
			p.Paint(g.scene(), v, spectrumSide, spectrumSide, 1)
			band, wave := falseWaves(p.plane.Cover, g, v)
			if band > worst {
				worst, at = band, zoom
			}
			if band > falseBand {
				t.Errorf("%s at %.3f px/mm: a false band of %.2f levels, want at most %d", g.name, zoom, band, falseBand)
			}
			if g.ground.Footprint(zoom) != raster.Wide {
				continue
			}
			tone = math.Max(tone, wave)
			if wave > falseTone {
				t.Errorf("%s at %.3f px/mm: a false wave of %.2f levels, want at most %d", g.name, zoom, wave, falseTone)
			}
		}
		t.Logf("%s: false bands of %.2f levels at most, at %.3f px/mm; in its tone false waves of %.2f", g.name, worst, at, tone)
	})
}

// The test above finds what it looks for: the box of one pixel, middles of pixels alone,
// and a band of three levels that is drawn into a true picture.
func TestAFalseBandIsFound(t *testing.T) {
	const n = spectrumSide
	for _, g := range starterGrounds(t) {
		if g.name != "square-dot" && g.name != "even-stripes" {
			continue
		}
		v := raster.View{X: 3, Y: 4, PxPerMM: 1.13 / g.least()}
		box := raster.NewPlane(n, n)
		g.ground.Paint(box, v, raster.Lay{})
		if band, _ := falseWaves(box.Cover, g, v); band < falseBand {
			t.Errorf("%s: the box of one pixel passes with %.2f levels", g.name, band)
		}
		near := raster.NewPlane(16*n, 16*n)
		g.ground.Paint(near, raster.View{X: v.X, Y: v.Y, PxPerMM: 16 * v.PxPerMM}, raster.Lay{})
		middles := make([]uint8, n*n)
		for i := range middles {
			middles[i] = near.Cover[(i/n*16+8)*16*n+i%n*16+8]
		}
		if band, _ := falseWaves(middles, g, v); band < 5*falseBand {
			t.Errorf("%s: the middles of pixels pass with %.2f levels", g.name, band)
		}
		var p Painter
		p.Paint(g.scene(), v, n, n, 1)
		planted := make([]uint8, n*n)
		for i, c := range p.plane.Cover {
			planted[i] = uint8(math.Round(math.Min(math.Max(float64(c)+3*math.Cos(2*math.Pi*float64(i%n+i/n)/14), 0), 255)))
		}
		if band, _ := falseWaves(planted, g, v); band < falseBand || band > 4 {
			t.Errorf("%s: a band of 3 levels is found as %.2f", g.name, band)
		}
	}
}
