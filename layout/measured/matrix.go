package measured

import "math"

func square(n int) [][]float64 {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
	}
	return a
}

// cholesky factors a symmetric matrix; false if it is singular: a pivot that
// lost all but the given share of its diagonal.
func cholesky(a [][]float64, share float64) ([][]float64, bool) {
	n := len(a)
	l := square(n)
	for i := range n {
		for j := 0; j <= i; j++ {
			sum := a[i][j]
			for k := range j {
				sum -= float64(l[i][k] * l[j][k])
			}
			if i != j {
				l[i][j] = sum / l[j][j]
				continue
			}
			if !(sum > share*a[i][i]) || math.IsInf(sum, 0) {
				return nil, false
			}
			l[i][i] = math.Sqrt(sum)
		}
	}
	return l, true
}

// solve solves l·lᵀ·x = b.
func solve(l [][]float64, b []float64) []float64 {
	n := len(l)
	x := append([]float64(nil), b...)
	for i := range n {
		for k := range i {
			x[i] -= float64(l[i][k] * x[k])
		}
		x[i] /= l[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			x[i] -= float64(l[k][i] * x[k])
		}
		x[i] /= l[i][i]
	}
	return x
}

func inverse(l [][]float64) [][]float64 {
	n := len(l)
	inv := square(n)
	for j := range n {
		e := make([]float64, n)
		e[j] = 1
		col := solve(l, e)
		for i := range n {
			inv[i][j] = col[i]
		}
	}
	return inv
}
