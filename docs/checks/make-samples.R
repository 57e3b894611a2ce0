# Makes the raw readings of samples/ from stated true concentrations. Base R only; run from the project's root:
#   Rscript docs/checks/make-samples.R
# The seeds are fixed: the files come out byte for byte the same. Everything in them is invented.
source("docs/checks/files.R")
RNGkind("Mersenne-Twister", "Inversion", "Rejection")

read_noise <- 0.0005     # SD of one reading, absorbance
pipetting_cv <- 0.006    # SD of the sample volume, relative

four <- function(x) sprintf("%.4f", x)

write_text <- function(path, lines, eol = "\n") {
    to <- file(path, "wb")
    writeBin(charToRaw(enc2utf8(paste0(paste0(lines, collapse = eol), eol))), to)
    close(to)
}

# A plate as a grid with row letters and column numbers, comma, decimal point.
write_grid <- function(path, plate, values) {
    grid <- matrix(four(values), nrow = max(plate$row), byrow = TRUE)
    rows <- paste(LETTERS[seq_len(nrow(grid))], apply(grid, 1, paste, collapse = ","), sep = ",")
    write_text(path, c(paste0(",", paste(seq_len(ncol(grid)), collapse = ",")), rows))
}

read_run <- function(folder) {
    run <- read_yaml_file(file.path(folder, "run.yaml"))
    layout <- read_yaml_file(file.path(folder, run$layout))
    plate <- wells_in_order(layout_words(layout))
    samples <- read.csv(file.path(folder, "samples.csv"), colClasses = "character")
    samples$F <- vapply(samples$dilution, dilution, 0)
    list(run = run, layout = layout, plate = plate, samples = samples)
}

# Absorbance per g/L of pipetted solution in a well read from above: the amount over the well's area.
per_gram_per_litre <- function(sample_uL, molar_mass, area_mm2, absorptivity = 6300) {
    absorptivity * sample_uL / area_mm2 / 10 / molar_mass
}

# --- cider-l-malic: end points, calibration by standards -------------------------------------------------------------

cider_true <- c( # g/L in the cider, slots 1 to 36
    5.12, 4.47, 6.03, 5.58, 3.92, 4.85, 2.71, 5.20, 2.64, 1.88, 3.11, 2.27,
    0.93, 1.42, 1.07, 5.35, 0.78, 1.33, 0.59, 0.412, 0.287, 0.166, 0.214, 0.138,
    0.089, 0.121, 0.021, 0.073, 0.84, 1.16, 2.05, 2.93, 4.30, 3.76, 1.62, 9.85
)

make_cider <- function(folder) {
    set.seed(20251)
    r <- read_run(folder)
    plate <- r$plate
    slope <- per_gram_per_litre(20, 134.09, 33.2)
    pipetted <- numeric(nrow(plate))
    colour <- numeric(nrow(plate))
    for (i in seq_len(nrow(plate))) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        if (is.null(entry)) {
            slot <- as.numeric(word)
            factor <- r$samples$F[match(word, r$samples$slot)]
            pipetted[i] <- cider_true[slot] / factor
            colour[i] <- 0.12 / factor
        } else if (entry$role == "standard") {
            pipetted[i] <- quantity(entry$level)
        } else if (entry$role == "control") {
            factor <- dilution(entry$dilution)
            pipetted[i] <- quantity(entry$assigned) * 1.012 / factor
            colour[i] <- 0.10 / factor
        }
    }
    n <- nrow(plate)
    given <- pipetted * (1 + rnorm(n, sd = pipetting_cv))
    given[plate$well == "G5"] <- given[plate$well == "G5"] * 0.86 # a bubble in the tip: slot 23
    background <- 0.105 + colour + rnorm(n, sd = 0.004)
    drift <- 0.0125 + rnorm(n, sd = 0.0006) # what the trigger enzyme brings with it
    write_grid(file.path(folder, "before.csv"), plate, background + rnorm(n, sd = read_noise))
    write_grid(file.path(folder, "after.csv"), plate, background + drift + slope * given + rnorm(n, sd = read_noise))
}

make_cider("samples/cider-l-malic")
