# Makes lines_by_r.csv: straight lines by lm of R, with the weights that a calibration may take.
# Run in this folder: Rscript lines_by_r.R > lines_by_r.csv
options(digits = 17)
read <- function(file) read.csv(file, comment.char = "#")
show <- function(set, model, weights, fit) {
  s <- summary(fit)
  rows <- s$coefficients
  for (i in seq_len(nrow(rows))) {
    cat(set, model, weights, i - 1, format(rows[i, 1], digits = 17), format(rows[i, 2], digits = 17),
        format(s$sigma, digits = 17), format(s$r.squared, digits = 17), s$df[2], sep = ",")
    cat("\n")
  }
}
cat("# Source: computed by lm of R", paste(R.version$major, R.version$minor, sep = "."),
    "with lines_by_r.R beside this file; good to about 13 digits\n")
cat("set,model,weights,parameter,estimate,se,sigma,r_squared,df\n")
sets <- list(eurachem_a5 = read("eurachem_a5.csv"), miller_7 = read("miller_fluorescein.csv")[1:7, ],
             miller_11 = read("miller_fluorescein.csv"))
for (name in names(sets)) {
  d <- sets[[name]]; names(d) <- c("x", "y")
  d$one <- 1; d$over_y <- 1 / ave(d$y, d$x)
  schemes <- list(none = d$one, "1/y" = d$over_y)
  if (min(d$x) > 0) schemes <- c(schemes, list("1/x" = 1 / d$x, "1/x2" = 1 / d$x^2))
  for (w in names(schemes)) {
    d$w <- schemes[[w]]
    show(name, "line", w, lm(y ~ x, d, weights = w))
    show(name, "line-through-zero", w, lm(y ~ 0 + x, d, weights = w))
    show(name, "quadratic", w, lm(y ~ x + I(x^2), d, weights = w))
  }
}
