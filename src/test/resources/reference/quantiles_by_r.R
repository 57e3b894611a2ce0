# Makes quantiles_by_r.csv. Run in this folder: Rscript quantiles_by_r.R > quantiles_by_r.csv
cat("# Source: computed by qt, qf and qnorm of R", paste(R.version$major, R.version$minor, sep = "."),
    "with quantiles_by_r.R beside this file\n")
cat("distribution,probability,df1,df2,quantile\n")
row <- function(...) cat(paste(..., sep = ","), "\n", sep = "")
g <- function(x) format(x, digits = 17)
# qf alone is good to 9 digits only in the lower tail; Newton steps on pf bring the rest.
qf.polished <- function(p, a, b) {
  q <- qf(p, a, b)
  for (i in 1:3) q <- q - (pf(q, a, b) - p) / df(q, a, b)
  q
}
for (p in c(1e-6, 0.0005, 0.005, 0.025, 0.05, 0.2, 0.6, 0.9, 0.95, 0.975, 0.99, 0.995, 0.9995)) {
  row("normal", p, 0, 0, g(qnorm(p)))
  for (d in c(1, 2, 3.5, 5, 13, 50.25, 1000)) row("t", p, d, 0, g(qt(p, d)))
  if (p >= 0.0005) for (d in list(c(1, 5), c(2, 12), c(3.5, 7), c(10, 3), c(5, 60), c(1, 1))) {
    row("F", p, d[1], d[2], g(qf.polished(p, d[1], d[2])))
  }
}
