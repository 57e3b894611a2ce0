# Makes fits_by_r.csv: lack of fit by anova, a variance function by glm, a five-parameter logistic by Gauss and Newton's method.
# Run in this folder: Rscript fits_by_r.R > fits_by_r.csv
g <- function(x) format(x, digits = 15)
row <- function(...) cat(paste(..., sep = ","), "\n", sep = "")
cat("# Source: computed by anova, glm and deriv of R", paste(R.version$major, R.version$minor, sep = "."),
    "with fits_by_r.R beside this file\n")
cat("what,value\n")
d <- read.csv("eurachem_a5.csv", comment.char = "#"); names(d) <- c("x", "y")
a <- anova(lm(y ~ x, d), lm(y ~ factor(x), d))
row("lack_of_fit_F", g(a$F[2])); row("lack_of_fit_p", g(a[["Pr(>F)"]][2]))
a <- anova(lm(y ~ x, d, weights = 1 / x), lm(y ~ factor(x), d, weights = 1 / x))
row("weighted_lack_of_fit_F", g(a$F[2]))
v <- read.csv("variances_constructed.csv", comment.char = "#")
v$m2 <- v$mean^2
fit <- glm(variance ~ m2, Gamma(link = "identity"), v, weights = df, start = c(1e-5, 1e-4),
           control = glm.control(epsilon = 1e-15, maxit = 500))
row("variance_constant", g(coef(fit)[[1]])); row("variance_proportional", g(coef(fit)[[2]]))
# Covariance under normal scatter: dispersion 2 in units of 1/df
cv <- summary(fit, dispersion = 2)$cov.scaled
z <- c(1, 0.5^2); s2 <- sum(z * coef(fit))
row("variance_df_at_0.5", g(2 * s2^2 / drop(t(z) %*% cv %*% z)))
s <- read.csv("logistic5_constructed.csv", comment.char = "#")
f <- deriv(~ D + (A - D) / (1 + exp(B * (lx - C)))^exp(G), c("A", "B", "C", "D", "G"), function(A, B, C, D, G, lx) NULL)
lx <- ifelse(s$x > 0, log(s$x), -1000)   # level 0: exp(-1000 B) is 0 and so are the derivatives
p <- c(A = 0.03, B = 1.4, C = log(0.45), D = 1.6, G = log(0.65))
for (i in 1:100) {
  v <- f(p[1], p[2], p[3], p[4], p[5], lx); J <- sqrt(s$w) * attr(v, "gradient")
  p <- p + qr.solve(J, sqrt(s$w) * (s$y - v), tol = 1e-12)
}
rss <- sum(s$w * (s$y - v)^2)
se <- sqrt(diag(solve(crossprod(J))) * rss / (nrow(s) - 5)); names(se) <- names(p)
row("logistic5_a", g(p[["A"]])); row("logistic5_b", g(p[["B"]])); row("logistic5_c", g(exp(p[["C"]])))
row("logistic5_d", g(p[["D"]])); row("logistic5_g", g(exp(p[["G"]]))); row("logistic5_rss", g(rss))
row("logistic5_se_b", g(se[["B"]])); row("logistic5_se_c", g(se[["C"]] * exp(p[["C"]])))
row("logistic5_se_g", g(se[["G"]] * exp(p[["G"]])))
