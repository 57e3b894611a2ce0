# A result by difference whose free half lies below the lowest standard, by R alone: figures for the tests, and how often the
# interval holds the truth.   Rscript docs/checks/difference-by-r.R   writes src/test/resources/reference/difference_by_r.csv
#
# Straight line through standards with a free intercept, all net of one blank, so that the blank cancels:
#   level = (y - a) / b       value = 1.9 * (Dt * level(total) - Df * level(free))
# The variance by the parameters is g' V g with V = vcov(lm) and g the gradient of the value with respect to (a, b): the
# intercept moves both halves, the farther below the standards the more the free one relies on it.

factor <- 342.297 / 180.156
levels <- rep(c(0.05, 0.10, 0.18, 0.26, 0.34, 0.42), each = 2)
# net dA made up by hand (2.1 A for 1 g/L and some scatter)
response <- c(0.1062, 0.1041, 0.2108, 0.2089, 0.3795, 0.3770, 0.5441, 0.5478, 0.7160, 0.7127, 0.8801, 0.8845)
cases <- data.frame(
    case = 1:5,
    total = c(0.4470, 0.6120, 0.2215, 0.0302, 0.1430),
    free = c(0.0310, 0.0021, 0.0740, 0.0297, -0.0018),
    dilution_total = c(100, 200, 5, 2, 50),
    dilution_free = c(100, 1, 5, 2, 10))

fit <- lm(response ~ levels)
a <- coef(fit)[[1]]
b <- coef(fit)[[2]]
v <- vcov(fit)
level <- function(y, a, b) (y - a) / b
cases$level_free <- level(cases$free, a, b)
cases$value <- factor * (cases$dilution_total * level(cases$total, a, b) - cases$dilution_free * cases$level_free)
cases$sd_curve <- vapply(seq_len(nrow(cases)), function(i) {
    x <- c(level(cases$total[i], a, b), cases$level_free[i])
    d <- c(cases$dilution_total[i], -cases$dilution_free[i])
    g <- factor * c(sum(-d / b), sum(-d * x / b))
    sqrt(drop(t(g) %*% v %*% g))
}, 0)

# How often value +- t u holds the truth: 20 000 plates, scatter of 0.002 A, the free half at 0, 1/5 and 4/5 of the
# lowest standard, total at 0.25 g/L; own scatter of the halves from the residuals, n = 2 wells each.
coverage <- function(free, dilution_free, seed) {
    set.seed(seed)
    draw <- function(net, n) net + rnorm(n, sd = 0.002)
    inside <- replicate(20000, {
        y <- draw(0.002 + 2.1 * levels, length(levels))
        line <- lm.fit(cbind(1, levels), y)
        s2 <- sum(line$residuals^2) / (length(y) - 2)
        V <- s2 * solve(crossprod(cbind(1, levels)))
        co <- line$coefficients
        yt <- mean(draw(0.002 + 2.1 * 0.25, 2))
        yf <- mean(draw(0.002 + 2.1 * free, 2))
        x <- (c(yt, yf) - co[1]) / co[2]
        d <- c(100, -dilution_free)
        g <- factor * c(sum(-d / co[2]), sum(-d * x / co[2]))
        own <- (factor / co[2])^2 * (d[1]^2 * s2 / 2 + d[2]^2 * s2 / 2)
        u <- sqrt(own + drop(t(g) %*% V %*% g))
        abs(factor * sum(d * x) - factor * sum(d * c(0.25, free))) <= qt(0.975, length(y) - 2) * u
    })
    100 * mean(inside)
}
covered <- c(
    "free at 0, dilution 100" = coverage(0, 100, 1), "free at 0.01 g/L, dilution 100" = coverage(0.01, 100, 2),
    "free at 0.04 g/L, dilution 100" = coverage(0.04, 100, 3), "free at 0.01 g/L, dilution 5" = coverage(0.01, 5, 4))

path <- "src/test/resources/reference/difference_by_r.csv"
out <- file(path, "wb")
text <- c(
    paste0("# Source: ", R.version.string, ": Rscript docs/checks/difference-by-r.R; constructed data, computed by lm and vcov"),
    "# standards: level in g/L, net dA in absorbance, two wells each",
    paste0("# standards ", paste(levels, response, sep = ":", collapse = " ")),
    paste0("# intercept ", sprintf("%.15g", a), " slope ", sprintf("%.15g", b)),
    paste0("# per cent of 20000 intervals at 95 % that hold the truth: ", paste0(names(covered), " ",
        sprintf("%.1f", covered), collapse = "; ")),
    "# value in g/L of sucrose; sd_curve its standard uncertainty from intercept and slope alone",
    paste(names(cases), collapse = ","),
    apply(cases, 1, function(row) paste(sprintf("%.15g", row), collapse = ",")))
writeBin(charToRaw(paste0(paste(text, collapse = "\n"), "\n")), out)
close(out)
