# Makes dixon_critical.csv: critical values of Dixon's ratios for one suspect at a named end of a normal sample, by
# numerical integration of the exact tail probability (trapezoids, which converge fast for such integrands).
#
# With x the highest value, x - v the lower corner of the ratio (x1 for r10, x2 for r11 and r21, x3 for r22) and the
# others free, for u = x - R v:
#   r10  P(r > R) = n (n-1)            int int f(x) f(x-v)             A^(n-2)
#   r11  P(r > R) = n (n-1)(n-2)       int int f(x) f(x-v) F(x-v)      A^(n-3)
#   r21  P(r > R) = n (n-1)(n-2)       int int f(x) f(x-v) F(x-v)    [ A^(n-3) + (n-3) A^(n-4) B ]
#   r22  P(r > R) = n (n-1)(n-2)(n-3)/2 int int f(x) f(x-v) F(x-v)^2 [ A^(n-4) + (n-4) A^(n-5) B ]
# where A = F(u) - F(x-v), B = F(x) - F(u), f and F the normal density and distribution function.
# Run in this folder: Rscript dixon_critical.R > dixon_critical.csv
h <- 0.05
grid <- expand.grid(x = seq(-5, 8, h), v = seq(h, 13, h))
x <- grid$x; v <- grid$v
fx <- dnorm(x) * dnorm(x - v); low <- pnorm(x - v); top <- pnorm(x)
keep <- fx > 1e-18; x <- x[keep]; v <- v[keep]; fx <- fx[keep]; low <- low[keep]; top <- top[keep]
ratio <- function(n) if (n <= 7) "r10" else if (n <= 10) "r11" else if (n <= 13) "r21" else "r22"
tail <- function(R, n) {
  mid <- pnorm(x - R * v); A <- pmax(mid - low, 0); B <- top - mid
  k <- switch(ratio(n),
    r10 = n * (n - 1) * sum(fx * A^(n - 2)),
    r11 = n * (n - 1) * (n - 2) * sum(fx * low * A^(n - 3)),
    r21 = n * (n - 1) * (n - 2) * sum(fx * low * (A^(n - 3) + (n - 3) * A^(n - 4) * B)),
    r22 = n * (n - 1) * (n - 2) * (n - 3) / 2 * sum(fx * low^2 * (A^(n - 4) + (n - 4) * A^(n - 5) * B)))
  k * h^2
}
cat("# Source: computed by numerical integration with dixon_critical.R beside this file, R",
    paste(R.version$major, R.version$minor, sep = "."), "\n")
cat("# One suspect at a named end; ratio as Dixon (1953) recommends: r10 to n = 7, r11 to 10, r21 to 13, r22 to 30.\n")
cat("n,ratio,p0.05,p0.025,p0.01,p0.005\n")
for (n in 3:30) {
  q <- sapply(c(0.05, 0.025, 0.01, 0.005), function(p)
    uniroot(function(R) tail(R, n) - p, c(0.05, 0.9999), tol = 1e-8)$root)
  cat(n, ratio(n), sprintf("%.4f", q), sep = ","); cat("\n")
}
