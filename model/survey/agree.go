package survey

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

const (
	// Critical is how many standard deviations a residual may have: two-sided
	// 0.1 % of the normal distribution (W. Baarda 1968; recomputed, the paper
	// was not read).
	Critical = 3.2905
	// noticed adds the power of the test: an error of noticed standard
	// deviations of the residual is found with 80 %.
	noticed = Critical + 0.8416
	// level is the risk of the global test of failing a good network.
	level = 0.05
)

// Agreement is the answer of a test.
type Agreement int

// The answers. A network without a reading to spare is unchecked: it neither
// passes nor fails.
const (
	NothingChecks Agreement = iota
	Agree
	Disagree
)

// String gives "unchecked", "agree" or "disagree".
func (a Agreement) String() string { return [...]string{"unchecked", "agree", "disagree"}[a] }

// GlobalTest holds the readings as a whole against the accuracy of the tools:
// the weighted sum of squared residuals against chi-square, one-sided, 5 %.
type GlobalTest struct {
	Answer Agreement
	DOF    int
	Sum    float64 // weighted sum of squared residuals
	Limit  float64 // the sum may reach this; 0 if nothing checks
	P      float64 // chance of such a sum or a larger one without any slip; 0 if nothing checks
}

func globalTest(sum float64, dof int) GlobalTest {
	t := GlobalTest{DOF: dof, Sum: sum}
	if dof <= 0 {
		return t
	}
	chi := distuv.ChiSquared{K: float64(dof)}
	t.Limit, t.P = chi.Quantile(1-level), chi.Survival(sum)
	t.Answer = Agree
	if sum > t.Limit {
		t.Answer = Disagree
	}
	return t
}

// hopeless is the sum of squares that one in a thousand good networks exceeds.
func hopeless(dof int) float64 { return distuv.ChiSquared{K: float64(dof)}.Quantile(0.999) }

// Test is the global test of an adjusted network.
func (r *Result) Test() GlobalTest { return globalTest(r.VTPV, r.DOF) }

// Detection is the chance, from 0 to 1, that an error is noticed in the
// residual of its own reading: an error of so many standard deviations of the
// reading, at its redundancy. Nothing is noticed where nothing checks.
func Detection(deviations, redundancy float64) float64 {
	if redundancy < sound {
		return 0
	}
	return distuv.UnitNormal.CDF(math.Abs(deviations)*math.Sqrt(redundancy) - Critical)
}
