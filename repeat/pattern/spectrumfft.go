package pattern

import (
	"math"
	"math/bits"
)

// A fft is the discrete Fourier transform of one length, a power of two
// (Cooley and Tukey 1965, decimation in time).
type fft struct {
	roots   []complex128 // exp(−2πi j/n), j < n/2
	swapped []int32      // j with its bits turned round
}

func newFFT(n int) *fft {
	f := &fft{make([]complex128, n/2), make([]int32, n)}
	for j := range f.roots {
		sin, cos := math.Sincos(-2 * math.Pi * float64(j) / float64(n))
		f.roots[j] = complex(cos, sin)
	}
	shift := 64 - bits.Len(uint(n-1))
	for j := range f.swapped {
		f.swapped[j] = int32(bits.Reverse64(uint64(j)) >> shift)
	}
	return f
}

// run replaces x by Σ x[j]·exp(−2πi jk/n).
func (f *fft) run(x []complex128) {
	for j, k := range f.swapped {
		if int(k) > j {
			x[j], x[k] = x[k], x[j]
		}
	}
	n := len(x)
	for half := 1; half < n; half *= 2 {
		stride := n / (2 * half)
		for start := 0; start < n; start += 2 * half {
			low, high := x[start:start+half], x[start+half:start+2*half]
			for j := range low {
				r, h := f.roots[j*stride], high[j]
				t := complex(real(r)*real(h)-imag(r)*imag(h), real(r)*imag(h)+imag(r)*real(h))
				low[j], high[j] = low[j]+t, low[j]-t
			}
		}
	}
}
