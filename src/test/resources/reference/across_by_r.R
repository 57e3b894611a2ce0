# Computes across_by_r.csv: Rscript across_by_r.R > across_by_r.csv
# median_ratio: n times the variance of the median of n standard normal variables, from the densities of order statistics.
# range_95: 95 % point of the range of n standard normal variables.
log_beta <- function(n, k) lgamma(n + 1) - lgamma(k) - lgamma(n - k + 1)
odd <- function(n) {
  k <- (n + 1) / 2
  density <- function(x) exp(log_beta(n, k) + (k - 1) * pnorm(x, log.p = TRUE) +
    (n - k) * pnorm(x, lower.tail = FALSE, log.p = TRUE) + dnorm(x, log = TRUE))
  2 * integrate(function(x) x^2 * density(x), 0, Inf, rel.tol = 1e-12)$value
}
even <- function(n) {
  k <- n / 2
  both <- function(m, h) exp(lgamma(n + 1) - 2 * lgamma(k) + (k - 1) * pnorm(m - h, log.p = TRUE) +
    (k - 1) * pnorm(m + h, lower.tail = FALSE, log.p = TRUE) + dnorm(m - h, log = TRUE) + dnorm(m + h, log = TRUE))
  density <- function(m) sapply(m, function(each) {
    2 * integrate(function(h) both(each, h), 0, Inf, rel.tol = 1e-12)$value
  })
  stopifnot(abs(2 * integrate(density, 0, Inf, rel.tol = 1e-10)$value - 1) < 1e-8)
  2 * integrate(function(m) m^2 * density(m), 0, Inf, rel.tol = 1e-10)$value
}
cat("# Source: across_by_r.R, base R 4.2.2 (integrate, qtukey). Computed; no units.\n")
cat("n,median_ratio,range_95\n")
for (n in 2:10) {
  cat(n, sprintf("%.10f", n * (if (n %% 2) odd(n) else even(n))), sprintf("%.6f", qtukey(0.95, n, Inf)), sep = ",")
  cat("\n")
}
