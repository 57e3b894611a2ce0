# Decision limits of straight lines: what lm and predict.lm of R make of them. Rscript detection_by_r.R > detection_by_r.csv
#
# decision   the x at which the line equals the upper end of the one-sided 95 % prediction interval of the mean of n wells
#            at x = 0, weighted as a well there (at the lowest level where 1/x and 1/x2 have no weight at 0)
# residual   3.3 s(at the low end) / b       intercept   3.3 se(a) / b

sets <- list(
  eurachem = list(x = rep(c(0.1, 0.3, 0.5, 0.7, 0.9), each = 3),
                  y = c(0.028, 0.029, 0.029, 0.084, 0.083, 0.081, 0.135, 0.131, 0.133, 0.180, 0.181, 0.183, 0.215, 0.230, 0.216)),
  # 1 to 10 mg/L in g/L, scatter in proportion to the level, 0.9 % of it; slope 2.83; constructed.
  milligrams = list(x = rep(c(0.001, 0.002, 0.004, 0.006, 0.008, 0.01), each = 2),
                    y = c(0.002851, 0.002805, 0.005618, 0.005719, 0.01136, 0.01124, 0.01687, 0.01709, 0.02284, 0.02251, 0.02815, 0.02859)))

cat("# Source: R", paste(R.version$major, R.version$minor, sep = "."), "lm and predict.lm, by detection_by_r.R; eurachem: EURACHEM/CITAC CG 4 A5; milligrams: constructed, levels in g/L.\n")
cat("set,weights,n,decision,residual,intercept\n")
for (set in names(sets)) for (word in c("none", "1/x", "1/x2")) for (n in c(1, 2)) {
  d <- as.data.frame(sets[[set]])
  w <- switch(word, none = rep(1, nrow(d)), "1/x" = 1 / d$x, "1/x2" = 1 / d$x^2)
  low <- min(d$x)
  w0 <- switch(word, none = 1, "1/x" = 1 / low, "1/x2" = 1 / low^2)
  fit <- lm(y ~ x, d, weights = w)
  up <- predict(fit, data.frame(x = 0), interval = "prediction", level = 0.90, weights = n * w0)[, "upr"]
  b <- coef(fit)[["x"]]
  cat(sprintf("%s,%s,%d,%.12g,%.12g,%.12g\n", set, word, n, (up - coef(fit)[[1]]) / b,
    3.3 * summary(fit)$sigma / sqrt(w0) / b, 3.3 * summary(fit)$coefficients[1, 2] / b))
}
