# A line whose weights are those of a fitted variance function: glm (Gamma, identity) for the function, lm for the line,
# predict for the value at a response. Run in this folder: Rscript weights_by_r.R > weights_by_r.csv
v <- read.csv("variances_constructed.csv", comment.char = "#")
g <- glm(variance ~ I(mean^2), family = Gamma(link = "identity"), data = v, weights = df / 2,
         start = c(9e-6, 1.4e-4), control = list(epsilon = 1e-15, maxit = 200))
c <- coef(g)[[1]]; p <- coef(g)[[2]]
# Constructed: response 0.004 + 2.83 x with errors.
x <- rep(c(0.05, 0.1, 0.2, 0.3, 0.4), each = 2)
y <- c(0.1472, 0.1431, 0.2889, 0.2842, 0.5701, 0.5787, 0.8402, 0.8621, 1.1462, 1.1289)
m <- ave(y, x)
w <- c / (c + p * m^2)
fit <- lm(y ~ x, weights = w)
s <- summary(fit)
cat("# Source: glm and lm of R", paste(R.version$major, R.version$minor, sep = "."), "by weights_by_r.R; the weight of a blank is 1.\n")
cat("what,value\n")
out <- c(weight_1 = w[1], weight_10 = w[10], intercept = coef(fit)[[1]], slope = coef(fit)[[2]], se_intercept = s$coefficients[1, 2],
         se_slope = s$coefficients[2, 2], residual_sd = s$sigma)
# The level of a mean response of two wells: own variance as the function says, scaled like the residuals.
for (r in c(0.2, 1.0)) {
  level <- (r - coef(fit)[[1]]) / coef(fit)[[2]]
  se <- predict(fit, data.frame(x = level), se.fit = TRUE)$se.fit[[1]]
  out[paste0("level_", r)] <- level
  out[paste0("u_", r)] <- sqrt(s$sigma^2 / (2 * c / (c + p * r^2)) + se^2) / coef(fit)[[2]]
}
for (n in names(out)) cat(sprintf("%s,%.12g\n", n, out[[n]]))
