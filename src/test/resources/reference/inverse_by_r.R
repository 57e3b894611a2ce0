# Makes inverse_by_r.csv: levels of a mean response of m wells with first-order standard uncertainty and 95 % interval,
# the interval as all x with |y - f(x)| <= t sqrt(s^2/(m w) + se(x)^2), searched with uniroot on predict(..., se.fit).
# Run in this folder: Rscript inverse_by_r.R > inverse_by_r.csv
read <- function(file) { d <- read.csv(file, comment.char = "#"); names(d) <- c("x", "y"); d }
sets <- list(eurachem_a5 = read("eurachem_a5.csv"), miller_7 = read("miller_fluorescein.csv")[1:7, ])
cat("# Source: computed by lm, predict and uniroot of R", paste(R.version$major, R.version$minor, sep = "."),
    "with inverse_by_r.R beside this file; good to about 10 digits\n")
cat("set,model,weights,response,m,level,u,low,high\n")
one <- function(set, model, weights, y, m) {
  d <- sets[[set]]
  d$w <- switch(weights, none = rep(1, nrow(d)), "1/x" = 1 / d$x)
  fit <- switch(model, line = lm(y ~ x, d, weights = w), "line-through-zero" = lm(y ~ 0 + x, d, weights = w),
                quadratic = lm(y ~ x + I(x^2), d, weights = w))
  s <- summary(fit)$sigma; t <- qt(0.975, fit$df.residual)
  f <- function(x) unname(predict(fit, data.frame(x = x)))
  se <- function(x) predict(fit, data.frame(x = x), se.fit = TRUE)$se.fit
  range <- range(d$x); span <- diff(range)
  level <- uniroot(function(x) f(x) - y, range, tol = 1e-15)$root
  w0 <- switch(weights, none = 1, "1/x" = 1 / level)
  own <- s^2 / (m * w0)
  slope <- (f(level + 1e-5 * span) - f(level - 1e-5 * span)) / (2e-5 * span)
  u <- sqrt(own + se(level)^2) / slope
  h <- function(x) abs(y - f(x)) - t * sqrt(own + se(x)^2)
  low <- uniroot(h, c(level - 0.4 * span, level), tol = 1e-15)$root
  high <- uniroot(h, c(level, level + 0.4 * span), tol = 1e-15)$root
  cat(paste(c(set, model, weights, y, m, format(c(level, u, low, high), digits = 15)), collapse = ","), "\n", sep = "")
}
for (y in c(0.0712, 0.15)) for (m in c(1, 2)) for (w in c("none", "1/x"))
  for (model in c("line", "line-through-zero", "quadratic")) one("eurachem_a5", model, w, y, m)
for (y in c(2.9, 13.5, 23)) one("miller_7", "line", "none", y, 1)
