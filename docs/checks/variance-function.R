# Likelihoods of the variance function s0^2 + (s1 y)^2 over simulated triplicate plates, by the optimiser of R.
#
#   Rscript docs/checks/variance-function.R > src/test/resources/reference/variance_function_plates.csv
#
# The plates come from a generator that is the same to the last digit in any language (Park and Miller's "minimal
# standard", x <- 16807 x mod (2^31 - 1), from memory), so that the file holds only what R makes of them. Every plate has
# 4 blanks and 26 slots of three wells. Their scatter is one of five kinds, plate after plate: both parts, both parts with
# a small constant one, constant only, proportional only with blanks that scatter a little, and 1 of 5 means far above the
# others. R searches from 15 starts with Nelder and Mead and then BFGS, in the logarithms of the two parts, and at the two edges.

seed <- 20240229
uniform <- function() { seed <<- (16807 * seed) %% 2147483647; seed / 2147483647 }
normal <- function() { u <- uniform(); v <- uniform(); sqrt(-2 * log(u)) * cos(2 * pi * v) }

plate <- function(kind) {
  s0 <- c(0.002, 0.0005, 0.003, 0.0002, 0.0015)[kind]
  s1 <- c(0.008, 0.012, 0, 0.02, 0.006)[kind]
  means <- numeric(0); variances <- numeric(0); freedom <- numeric(0)
  for (slot in 0:26) {
    top <- if (kind == 5 && slot %% 5 != 0) 0.15 else 1.2
    mean <- if (slot == 0) 0 else 0.01 + top * uniform()
    wells <- if (slot == 0) 4 else 3
    y <- numeric(wells)
    for (i in 1:wells) y[i] <- mean + sqrt(s0^2 + (s1 * mean)^2) * normal()
    means[slot + 1] <- if (slot == 0) 0 else sum(y) / wells
    variances[slot + 1] <- sum((y - sum(y) / wells)^2) / (wells - 1)
    freedom[slot + 1] <- wells - 1
  }
  list(m = means, v = variances, f = freedom)
}

loglik <- function(c, p, d) { s <- c + p * d$m^2; -sum(d$f / 2 * (log(s) + d$v / s)) }

best <- function(d) {
  pooled <- sum(d$f * d$v) / sum(d$f)
  found <- list(l = loglik(pooled, 0, d), c = pooled, p = 0)
  for (share in c(0.001, 0.03, 0.2, 0.5, 0.9)) for (rel in c(1e-6, 1e-4, 1e-3)) {
    f <- function(q) { l <- -loglik(exp(q[1]), exp(q[2]), d); if (is.finite(l)) l else 1e10 }
    o <- optim(log(c(share * pooled, rel)), f, method = "Nelder-Mead", control = list(reltol = 1e-15, maxit = 5000))
    b <- try(optim(o$par, f, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000)), silent = TRUE)
    if (!inherits(b, "try-error") && b$value < o$value) o <- b
    if (-o$value > found$l) found <- list(l = -o$value, c = exp(o$par[1]), p = exp(o$par[2]))
  }
  found
}

cat("# Source: R", paste(R.version$major, R.version$minor, sep = "."), "optim, by docs/checks/variance-function.R, which says how the plates are made.\n")
cat("# Units: constant and proportional are variances, log_likelihood is -sum(df/2 (log s2 + var/s2)); the first two numbers are of the first slot after the blanks.\n")
cat("plate,kind,first_mean,first_variance,log_likelihood,constant,proportional\n")
for (i in 1:1000) {
  kind <- (i - 1) %% 5 + 1
  d <- plate(kind)
  b <- best(d)
  cat(sprintf("%d,%d,%.15g,%.15g,%.12g,%.8g,%.8g\n", i, kind, d$m[2], d$v[2], b$l, b$c, b$p))
}
