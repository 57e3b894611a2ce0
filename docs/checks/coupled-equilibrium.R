# Acetic acid coupled to the equilibrium of L-malate dehydrogenase, from amounts and the law of mass action only:
#   Rscript docs/checks/coupled-equilibrium.R > src/test/resources/reference/coupled_equilibrium.csv
# All in absorbance of NADH. nad, malate: what was put in. q: NADH in equilibrium, with as much oxaloacetate.
# Acetate x takes as much oxaloacetate away; NADH p then solves p (p - x) / ((nad - p) (malate - p)) = K.
cat("# Source: ", R.version.string, ": Rscript docs/checks/coupled-equilibrium.R\n", sep = "")
cat("# In absorbance: reactants put in, NADH before (q) and after (p) acetate x; excess: what p - q^2/p says, in % of x.\n")
cat("# Licence: made here. Status: recomputed from the law of mass action.\n")
cat("nad,malate,q,x,p,excess_off_percent\n")
solve_p <- function(nad, malate, x, K) {
  f <- function(p) p * (p - x) - K * (nad - p) * (malate - p)
  lo <- x; hi <- min(nad, malate)
  for (i in 1:200) { mid <- (lo + hi) / 2; if (f(mid) > 0) hi <- mid else lo <- mid }
  (lo + hi) / 2
}
for (nad in c(6.831, 3.416)) for (malate in c(28.464)) for (q in c(0.05, 0.15, 0.3, 0.5)) {
  K <- q^2 / ((nad - q) * (malate - q))
  for (x in c(0.1, 0.3, 0.6, 1.0)) {
    p <- solve_p(nad, malate, x, K)
    cat(sprintf("%.3f,%.3f,%.3f,%.3f,%.12f,%.3f\n", nad, malate, q, x, p, 100 * (p - q^2 / p - x) / x))
  }
}
