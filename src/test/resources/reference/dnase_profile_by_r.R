# Makes dnase_profile_by_r.csv: 95 % intervals of levels from the profile of the sum of squares, four-parameter logistic on
# DNase Run 1 with the mean of m readings as one more point, weight m; least squares by Gauss and Newton with
# derivatives from deriv.
# Run in this folder: Rscript dnase_profile_by_r.R > dnase_profile_by_r.csv
d <- read.csv("dnase_run1.csv", comment.char = "#"); names(d) <- c("x", "y")
f <- deriv(~ D + (A - D) / (1 + exp(B * (lx - C))), c("A", "B", "C", "D"), function(A, B, C, D, lx) NULL)
least <- function(x, y, w) {
  p <- c(-0.0079, 0.941, log(4.515), 2.377); lx <- log(x)
  for (i in 1:60) {
    v <- f(p[1], p[2], p[3], p[4], lx)
    step <- qr.solve(sqrt(w) * attr(v, "gradient"), sqrt(w) * (y - v), tol = 1e-12)
    size <- 1
    while (sum(w * (y - f(p[1] + size * step[1], p[2] + size * step[2], p[3] + size * step[3], p[4] + size * step[4], lx))^2) >
           sum(w * (y - v)^2) && size > 1e-3) size <- size / 2
    p <- p + size * step
    if (max(abs(step)) < 1e-10) break
  }
  sum(w * (y - f(p[1], p[2], p[3], p[4], lx))^2)
}
n <- nrow(d); alone <- least(d$x, d$y, rep(1, n)); s2 <- alone / (n - 4); t <- qt(0.975, n - 4)
cat("# Source: computed by Gauss and Newton's method and uniroot of R", paste(R.version$major, R.version$minor, sep = "."),
    "with dnase_profile_by_r.R beside this file; good to about 8 digits\n")
cat("response,m,low,high\n")
for (y in c(0.1, 0.5, 1, 1.5)) for (m in 1:2) {
  h <- function(x) least(c(d$x, x), c(d$y, y), c(rep(1, n), m)) - alone - t^2 * s2
  level <- 4.514989786867248 * ((-0.007897174366093569 - y) / (y - 2.377238866531051))^(1 / 0.9411068202835225)
  low <- uniroot(h, c(level * 0.3, level), tol = 1e-12)$root
  high <- uniroot(h, c(level, level * 1.6), tol = 1e-12)$root
  cat(paste(c(y, m, format(c(low, high), digits = 12)), collapse = ","), "\n", sep = "")
}
