# Makes random_effects_by_r.csv: straight lines through points that differ by more than their own uncertainty, by lm(y ~ x, weights = w) of R
# with w = 1 / (u^2 + between), the variance between found by uniroot from sum(w * residuals^2) = n - 2 (Mandel and Paule).
# Run in this folder: Rscript random_effects_by_r.R > random_effects_by_r.csv
options(digits = 17)
sets <- list(
  # creep in mA/min on change of absorbance; made up
  differing = list(x = c(0.004, 0.11, 0.23, 0.31, 0.42, 0.58, 0.73, 0.95), y = c(0.05, 0.61, 0.42, 1.38, 1.10, 2.31, 2.02, 3.40),
                   u = c(0.02, 0.03, 0.03, 0.05, 0.04, 0.04, 0.08, 0.06)),
  alike = list(x = c(0.01, 0.2, 0.4, 0.6, 0.8), y = c(0.10, 0.12, 0.08, 0.11, 0.09), u = c(0.05, 0.05, 0.06, 0.05, 0.07)),
  mixed = list(x = c(0, 0.3, 0.3, 0.6, 0.9, 1.2), y = c(0.1, 2.0, -1.0, 3.5, 0.4, 5.0), u = c(0.01, 0.5, 0.5, 0.02, 1.0, 0.1)))
cat("# Source: computed by lm and uniroot of R", paste(R.version$major, R.version$minor, sep = "."),
    "with random_effects_by_r.R beside this file; good to about 10 digits\n")
cat("set,intercept,slope,se,between,p,x,y,u\n")
for (name in names(sets)) {
  d <- sets[[name]]
  at <- function(v) lm(d$y ~ d$x, weights = 1 / (d$u^2 + v))
  excess <- function(v) sum(weighted.residuals(at(v))^2) - (length(d$x) - 2)
  v <- if (excess(0) <= 0) 0 else uniroot(excess, c(0, 100), tol = 1e-15)$root
  fit <- at(v); s <- summary(fit)
  se <- sqrt(s$cov.unscaled[2, 2])
  t <- coef(fit)[2] / se
  cat(name, coef(fit)[1], coef(fit)[2], se, v, 2 * pt(-abs(t), length(d$x) - 2),
      paste(d$x, collapse = " "), paste(d$y, collapse = " "), paste(d$u, collapse = " "), sep = ",")
  cat("\n")
}
