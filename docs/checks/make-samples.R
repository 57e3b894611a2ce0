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

make_cider <- function(folder, seed = 20251, true = cider_true, bubble = "G5") {
    set.seed(seed)
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
            if (slot > length(true)) next # the well stays empty
            factor <- r$samples$F[match(word, r$samples$slot)]
            pipetted[i] <- true[slot] / factor
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
    given[plate$well == bubble] <- given[plate$well == bubble] * 0.86 # a bubble in the tip: slot 23
    background <- 0.105 + colour + rnorm(n, sd = 0.004)
    drift <- 0.0125 + rnorm(n, sd = 0.0006) # what the trigger enzyme brings with it
    write_grid(file.path(folder, "before.csv"), plate, background + rnorm(n, sd = read_noise))
    write_grid(file.path(folder, "after.csv"), plate, background + drift + slope * given + rnorm(n, sd = read_noise))
}

make_cider("samples/cider-l-malic")

# --- cider-l-malic-repeat: eight of the samples again, the last one from a bottle that stood open -----------------------

make_cider("samples/cider-l-malic-repeat", 20256, c(cider_true[c(2, 9, 16, 20, 23, 25, 29)], 1.47), "")

# --- puree-citric-solids: falling signal, by absorptivity, sample blanks and spikes ----------------------------------

puree_true <- c(0.82, 1.58, 2.71, 0.93, 1.12, 0.148, 0.76, 0.88, 0.031, 0.024) # g/100 g, slots 1 to 10
puree_drift <- c(0.003, 0.006, 0.011, 0.002, 0.009, 0.004, 0.016, 0.003, 0, 0) # fall without trigger, 8 with a blank
puree_found <- c(1, 1, 0.955, 1, 0.985, 1, 0.93, 1, 1, 1) # part of the signal that the matrix lets through

make_puree <- function(folder) {
    set.seed(20252)
    run <- read_yaml_file(file.path(folder, "run.yaml"))
    layout <- read_yaml_file(file.path(folder, run$layout))
    samples <- read.csv2(file.path(folder, "samples.csv"), colClasses = "character")
    mass <- as.numeric(sub(",", ".", samples$mass_g))
    factor <- vapply(samples$dilution, dilution, 0)
    in_extract <- puree_true / 100 * mass / (as.numeric(samples$extract_mL) / 1000) / factor # g/L as pipetted
    plate <- wells_in_order(layout_words(layout))
    n <- nrow(plate)
    pipetted <- fall <- colour <- numeric(n)
    through <- rep(1, n)
    empty <- plate$word == "."
    for (i in which(!empty)) {
        word <- plate$word[i]
        entry <- layout$legend[[word]]
        slot <- if (is.null(entry)) as.numeric(word) else if (!is.null(entry$of)) as.numeric(entry$of) else NA
        triggered <- TRUE
        if (!is.na(slot)) {
            phi <- if (is.null(entry$fraction)) 0 else quantity(entry$fraction)
            pipetted[i] <- in_extract[slot] * (1 - phi)
            fall[i] <- puree_drift[slot]
            colour[i] <- 0.03 + 6 * puree_drift[slot]
            through[i] <- puree_found[slot]
        }
        if (!is.null(entry)) {
            if (entry$role == "spike") pipetted[i] <- pipetted[i] + quantity(entry$added)
            if (entry$role == "control") pipetted[i] <- quantity(entry$assigned) * 0.992
            triggered <- entry$role != "sample-blank" && !identical(entry$trigger, "none")
        }
        if (triggered) fall[i] <- fall[i] + 0.0115 else pipetted[i] <- 0 # the enzyme's own fall
    }
    slope <- per_gram_per_litre(20, 192.12, 33.2) * through
    given <- pipetted * (1 + rnorm(n, sd = pipetting_cv))
    before <- 1.325 + colour + rnorm(n, sd = 0.005)
    after <- before - 0.0055 - fall - slope * given + rnorm(n, sd = 0.0006)
    before[empty] <- after[empty] <- 0.0415
    list_file <- function(name, title, values) {
        text <- c("Plate reader record;fruit corner", paste0("Title;", title), "Wavelength;340 nm",
            "Temperature;37,0 \u00b0C", "", "Well;Absorbance",
            paste0(plate$well, ";", sub(".", ",", four(values), fixed = TRUE)))
        to <- file(file.path(folder, name), "wb")
        writeBin(unlist(iconv(paste0(paste0(text, collapse = "\r\n"), "\r\n"), "UTF-8", "CP1252", toRaw = TRUE)), to)
        close(to)
    }
    list_file("before.csv", "before the lyase", before + rnorm(n, sd = read_noise))
    list_file("after.csv", "10 min after the lyase", after + rnorm(n, sd = read_noise))
}

make_puree("samples/puree-citric-solids")

# --- juice-glucose-fructose: two triggers in one well ----------------------------------------------------------------

juice_glucose <- c( # g/L in the juice, slots 1 to 36
    22.4, 19.8, 25.1, 20.6, 23.3, 18.2, 21.9, 28.4, 16.2, 8.1, 19.0, 21.0,
    78.0, 84.0, 52.0, 61.0, 34.0, 30.0, 27.0, 25.0, 14.0, 19.0, 0.110, 0.090,
    0.180, 6.20, 4.80, 7.00, 18.0, 15.5, 21.4, 71.0, 64.0, 0.550, 5.10, 0.210
)
juice_fructose <- c(
    58.1, 61.0, 55.2, 63.7, 52.9, 66.5, 57.0, 49.8, 68.0, 74.0, 60.2, 45.0,
    80.0, 86.0, 71.0, 52.0, 36.0, 33.0, 28.0, 27.0, 16.0, 21.0, 0.210, 0.340,
    0.520, 12.4, 15.1, 10.9, 31.0, 33.2, 27.7, 118, 131, 1.40, 17.2, 0.280
)

make_juice <- function(folder) {
    set.seed(20263)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    glucose <- fructose <- colour <- numeric(n)
    for (i in seq_len(n)) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        if (is.null(entry)) {
            slot <- as.numeric(word)
            factor <- r$samples$F[match(word, r$samples$slot)]
            glucose[i] <- juice_glucose[slot] / factor
            fructose[i] <- juice_fructose[slot] / factor
            colour[i] <- 0.25 / factor
        } else if (entry$role != "blank") {
            given <- or_default(entry$levels, entry$assigned)
            factor <- dilution(or_default(entry$dilution, "1"))
            glucose[i] <- quantity(given$`D-glucose`) / factor
            fructose[i] <- quantity(given$`D-fructose`) / factor
        }
    }
    slope <- per_gram_per_litre(20, 180.16, 33.2)
    volume <- 1 + rnorm(n, sd = pipetting_cv)
    a0 <- 0.118 + colour + rnorm(n, sd = 0.004)
    a1 <- a0 + 0.0090 + rnorm(n, sd = 0.0006) + slope * glucose * volume
    a2 <- a1 + 0.0065 + rnorm(n, sd = 0.0006) + slope * fructose * volume
    a2[plate$well == "H6"] <- a2[plate$well == "H6"] + 0.062 # a bubble at the last reading: slot 19
    grid_file <- function(name, heading, values) {
        grid <- matrix(four(values + rnorm(n, sd = read_noise)), nrow = max(plate$row), byrow = TRUE)
        write_text(file.path(folder, name), c(
            paste0("Juices and ciders, ", heading), "Wavelength\t340 nm", "",
            paste0("\t", paste(sprintf("%02d", seq_len(ncol(grid))), collapse = "\t")),
            paste(LETTERS[seq_len(nrow(grid))], apply(grid, 1, paste, collapse = "\t"), sep = "\t")))
    }
    grid_file("a0.txt", "before the enzymes", a0)
    grid_file("a1.txt", "15 min after hexokinase", a1)
    grid_file("a2.txt", "15 min after isomerase", a2)
}

make_juice("samples/juice-glucose-fructose")

# --- cider-malic-kinetic: the whole reaction, with creep -------------------------------------------------------------

lees_pipetted <- c( # g/L in the solution pipetted, slots 1 to 36
    0.31, 0.27, 0.22, 0.19, 0.35, 0.12, 0.26, 0.08, 0.16, 0.29, 0.11, 0.24,
    0.33, 0.21, 0.14, 0.30, 0.18, 0.09, 0.25, 0.37, 0.13, 0.28, 0.10, 0.07,
    0.17, 0.23, 0.32, 0.15, 0.20, 0.34, 0.12, 0.19, 0.26, 0.36, 0.22, 0.30
)

# What a saturable enzyme has turned over after t seconds, in absorbance: dP/dt = Vmax (S0 - P) / (Km + S0 - P),
# by the classical Runge-Kutta method with steps of 0.5 s; one column a well.
progress <- function(times, s0, vmax, km) {
    rate <- function(p) vmax * (s0 - p) / (km + s0 - p)
    step <- 0.5
    p <- numeric(length(s0))
    done <- matrix(0, length(times), length(s0))
    for (k in seq_len(max(times) / step)) {
        k1 <- rate(p)
        k2 <- rate(p + step / 2 * k1)
        k3 <- rate(p + step / 2 * k2)
        k4 <- rate(p + step * k3)
        p <- p + step / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        at <- which(times == k * step)
        if (length(at) == 1) done[at, ] <- p
    }
    done
}

make_kinetic <- function(folder) {
    set.seed(20254)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    pipetted <- numeric(n)
    role <- rep("sample", n)
    slot <- rep("", n)
    for (i in seq_len(n)) {
        entry <- r$layout$legend[[plate$word[i]]]
        if (is.null(entry)) {
            slot[i] <- plate$word[i]
            pipetted[i] <- lees_pipetted[as.numeric(plate$word[i])]
        } else {
            role[i] <- entry$role
            if (entry$role == "standard") pipetted[i] <- quantity(entry$level)
        }
    }
    slope <- per_gram_per_litre(20, 134.09, 33.2)
    s0 <- slope * pipetted * (1 + rnorm(n, sd = 0.003))
    matrix_creep <- runif(36, 0.2, 2.4) # mA/min, one a sample
    creep <- ifelse(role == "sample", matrix_creep[suppressWarnings(as.numeric(slot))], 0.35) + rnorm(n, sd = 0.03)
    jump <- 0.0080 + rnorm(n, sd = 0.0004) # the trigger enzyme's own absorbance
    vmax <- 0.0050 * (1 + rnorm(n, sd = 0.03))
    note <- rep("", n)
    slow <- slot == "12"
    vmax[slow] <- 0.00055
    note[slow] <- "reaction still running at the end"
    baseline <- 0.105 + ifelse(role == "sample", 0.02, 0) + rnorm(n, sd = 0.004)
    file_time <- seq(0, by = 15, length.out = 94)
    t <- file_time - 225
    after <- t >= 0
    reacted <- progress(t[after], s0, vmax, 0.12)
    a <- matrix(rep(baseline, each = length(t)), length(t))
    a[after, ] <- a[after, ] + rep(jump, each = sum(after)) + reacted + outer(t[after] / 60, creep / 1000)
    noise <- sqrt(0.0005^2 + (0.001 * a)^2)
    a <- a + noise * matrix(rnorm(length(a)), nrow(a))
    bubble <- plate$well == "E8"
    a[file_time == 1005, bubble] <- a[file_time == 1005, bubble] + 0.045
    note[bubble] <- "one reading 45 mA too high at 1005 s"
    write_text(file.path(folder, "trace.csv"), c(
        paste(c("Time (s)", plate$well), collapse = ","),
        paste(file_time, apply(matrix(four(a), nrow(a)), 1, paste, collapse = ","), sep = ",")))
    factor <- ifelse(role == "sample", r$samples$F[match(slot, r$samples$slot)], 1)
    exact <- function(x) sprintf("%.17g", x)
    write_text(file.path(folder, "expected-true.csv"), c(
        "# What the traces were made from (docs/checks/make-samples.R): true values, before noise. delta_a: jump of the",
        "# trigger and complete reaction, at the trigger; level: of the solution pipetted; value: in the original sample.",
        "well,role,slot,a_before,delta_a,creep_per_min,level,dilution,value,unit,note",
        paste(plate$well, role, slot, exact(baseline), exact(jump + s0), exact(creep / 1000), exact(pipetted),
            factor, exact(pipetted * factor), "g/L", note, sep = ",")))
}

make_kinetic("samples/cider-malic-kinetic")

# --- cuvette-typed: read one by one, typed in ------------------------------------------------------------------------

dairy_true <- c(8.52, 8.31, 6.94, 7.48, 0.352, 5.21, 2.13, 0.0353, 7.06) # g/L, slots 1 to 9

make_cuvettes <- function(folder) {
    set.seed(20255)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    pipetted <- numeric(n)
    volume <- rep(0.1, n)
    for (i in seq_len(n)) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        if (is.null(entry)) {
            listed <- match(word, r$samples$slot)
            pipetted[i] <- dairy_true[as.numeric(word)] / r$samples$F[listed]
            own <- r$samples$volume[listed]
            if (own != "") volume[i] <- quantity(own) / 1000
        } else if (entry$role != "blank") {
            pipetted[i] <- quantity(or_default(entry$level, entry$assigned))
        }
    }
    signal <- 6300 * pipetted / 90.08 * volume * (1 + rnorm(n, sd = 0.004)) / 2.24
    before <- 0.212 + rnorm(n, sd = 0.006)
    after <- before * 2.22 / 2.24 + 0.0085 + rnorm(n, sd = 0.0006) + signal
    typed <- function(name, values) {
        write_text(file.path(folder, name), c("well,absorbance", paste(plate$well, four(values), sep = ",")))
    }
    typed("before.csv", before + rnorm(n, sd = 0.0003))
    typed("after.csv", after + rnorm(n, sd = 0.0003))
}

make_cuvettes("samples/cuvette-typed")

# --- nectar-sucrose: D-glucose free, and after inversion -------------------------------------------------------------

nectar_glucose <- c( # g/L in the drink, slots 1 to 18
    28.0, 26.5, 21.0, 24.4, 19.8, 12.1, 22.3, 27.7, 11.9, 25.0, 3.10, 2.60, 2.90, 41.0, 52.0, 24.0, 21.5, 9.80
)
nectar_sucrose <- c(
    61.0, 64.5, 78.0, 70.2, 82.4, 96.0, 74.0, 58.8, 91.0, 66.3, 68.0, 71.5, 75.0, 545, 498, 0, 2.40, 84.0
)

make_nectar <- function(folder) {
    set.seed(20266)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    glucose <- colour <- numeric(n)
    total <- logical(n)
    inverted <- molar_mass("C6H12O6") / molar_mass("C12H22O11")
    for (i in seq_len(n)) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        if (is.null(entry)) {
            listed <- match(word, r$samples$slot)
            total[i] <- r$samples$treatment[listed] == "total"
            which_one <- match(r$samples$sample[listed], r$samples$sample)
            whole <- nectar_glucose[which_one] + (if (total[i]) inverted * nectar_sucrose[which_one] * 0.997 else 0)
            glucose[i] <- whole / r$samples$F[listed]
            colour[i] <- 0.4 / r$samples$F[listed]
        } else {
            total[i] <- entry$group == "total"
            if (entry$role == "standard") glucose[i] <- quantity(entry$level)
            if (entry$role == "control") glucose[i] <- quantity(entry$assigned) * 0.994
        }
    }
    slope <- per_gram_per_litre(20, molar_mass("C6H12O6"), 33.2)
    given <- glucose * (1 + rnorm(n, sd = pipetting_cv))
    given[plate$well == "G9"] <- given[plate$well == "G9"] * 1.11 # two drops: slot 12, free
    before <- 0.112 + colour + ifelse(total, 0.014, 0) + rnorm(n, sd = 0.004) # invertase scatters light
    drift <- ifelse(total, 0.0131, 0.0094) + rnorm(n, sd = 0.0006) # it brings a little glucose with it
    write_grid(file.path(folder, "before.csv"), plate, before + rnorm(n, sd = read_noise))
    write_grid(file.path(folder, "after.csv"), plate, before + drift + slope * given + rnorm(n, sd = read_noise))
}

make_nectar("samples/nectar-sucrose")

# --- vinegar-acetic-coupled: an equilibrium that holds NADH before acetic acid reacts --------------------------------

vinegar_true <- c( # g/L, slots 1 to 30
    0.31, 0.44, 0.52, 0.66, 0.29, 0.83, 0.048, 0.061, 1.02, 1.31, 0.88, 1.47, 6.10, 7.20, 5.40, 8.30,
    13.1, 15.2, 11.8, 16.4, 27.5, 31.0, 25.2, 33.9, 51.2, 49.6, 47.3, 55.0, 41.8, 0.006
)

make_vinegar <- function(folder) {
    set.seed(20267)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    acetic <- colour <- numeric(n)
    for (i in seq_len(n)) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        listed <- match(word, r$samples$slot)
        if (is.null(entry)) {
            if (!is.na(listed)) acetic[i] <- vinegar_true[as.numeric(word)] / r$samples$F[listed]
            if (!is.na(listed)) colour[i] <- 0.15 / r$samples$F[listed]
        } else if (entry$role == "control") {
            acetic[i] <- quantity(entry$assigned) * 1.008 / dilution(entry$dilution)
        }
    }
    slope <- per_gram_per_litre(20, molar_mass("C2H4O2"), 33.2)
    used <- slope * (acetic + 0.0009) * (1 + rnorm(n, sd = pipetting_cv)) # the reagents hold a trace of acetate
    settled <- 0.162 * (1 + rnorm(n, sd = 0.01)) # NADH of the equilibrium, malate and NAD in excess
    # Law of mass action: p (p - used) = settled^2, p the NADH in the end.
    in_the_end <- (used + sqrt(used^2 + 4 * settled^2)) / 2
    a0 <- 0.231 + colour + rnorm(n, sd = 0.004)
    a1 <- a0 + settled
    a2 <- a0 + in_the_end
    empty <- is.na(match(plate$word, r$samples$slot)) & grepl("^[0-9]", plate$word)
    a0[empty] <- a1[empty] <- a2[empty] <- 0.0405
    for (k in 0:2) {
        values <- list(a0, a1, a2)[[k + 1]] + rnorm(n, sd = 0.0003)
        write_grid(file.path(folder, paste0("a", k, ".csv")), plate, values)
    }
}

make_vinegar("samples/vinegar-acetic-coupled")

# --- dairy-lactose: D-galactose free, and after hydrolysis; little is free of it in milk, all of it in lactose-free milk ------

dairy_galactose <- c( # g/L, slots 1 to 18
    0.031, 0.052, 0.044, 0.080, 0.067, 0.025, 0.21, 0.16, 4.1, 12.3, 9.8, 8.9, 24.6, 25.1, 21.0, 0, 0.012, 0.06
)
dairy_lactose <- c(
    46.8, 48.1, 47.2, 47.5, 49.0, 43.9, 47.0, 45.1, 38.2, 33.0, 36.1, 34.4, 0.03, 0.04, 7.2, 0, 0.41, 46.0
)

make_dairy <- function(folder) {
    set.seed(20268)
    r <- read_run(folder)
    plate <- r$plate
    n <- nrow(plate)
    galactose <- numeric(n)
    total <- logical(n)
    released <- molar_mass("C6H12O6") / molar_mass("C12H22O11")
    for (i in seq_len(n)) {
        word <- plate$word[i]
        entry <- r$layout$legend[[word]]
        if (is.null(entry)) {
            listed <- match(word, r$samples$slot)
            total[i] <- r$samples$treatment[listed] == "total"
            which_one <- match(r$samples$sample[listed], r$samples$sample)
            whole <- dairy_galactose[which_one] + (if (total[i]) released * dairy_lactose[which_one] * 0.998 else 0)
            galactose[i] <- whole / r$samples$F[listed]
        } else {
            total[i] <- entry$group == "total"
            if (entry$role == "standard") galactose[i] <- quantity(entry$level)
            if (entry$role == "control") galactose[i] <- quantity(entry$assigned) * 1.006
        }
    }
    slope <- per_gram_per_litre(20, molar_mass("C6H12O6"), 33.2)
    given <- galactose * (1 + rnorm(n, sd = pipetting_cv))
    before <- 0.108 + ifelse(total, 0.009, 0) + rnorm(n, sd = 0.004)
    drift <- ifelse(total, 0.0102, 0.0088) + rnorm(n, sd = 0.0006)
    write_grid(file.path(folder, "before.csv"), plate, before + rnorm(n, sd = read_noise))
    write_grid(file.path(folder, "after.csv"), plate, before + drift + slope * given + rnorm(n, sd = read_noise))
}

make_dairy("samples/dairy-lactose")
