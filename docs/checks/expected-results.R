# Works up the runs of samples/ that consist of end points, independently of the program, and writes what it should
# find: expected.csv and expected-wells.csv beside each run. Base R only; run from the project's root:
#   Rscript docs/checks/expected-results.R
# The arithmetic is that of docs/formats.md, "The arithmetic". Nothing is shared with the program but the files.
source("docs/checks/files.R")

digits <- function(x) ifelse(is.na(x), "", sprintf("%.17g", x))
quoted <- function(x) ifelse(grepl("[,\"]", x), paste0("\"", gsub("\"", "\"\"", x), "\""), x)

# --- reading exports: one function a form, named in the list at the end ----------------------------------------------

# Row letters down, column numbers across, after a heading line; comma and decimal point.
grid_readings <- function(path) {
    grid <- as.matrix(read.csv(path, row.names = 1, check.names = FALSE))
    values <- as.vector(t(grid))
    names(values) <- paste0(rep(rownames(grid), each = ncol(grid)), rep(colnames(grid), nrow(grid)))
    values
}

# One line a well after a heading line that begins with the word for wells; semicolon and decimal comma, CP1252.
list_readings <- function(path) {
    from_file <- file(path, encoding = "CP1252")
    lines <- readLines(from_file, warn = FALSE)
    close(from_file)
    from <- grep("^Well;", lines)
    parts <- strsplit(lines[(from + 1):length(lines)], ";")
    values <- as.numeric(sub(",", ".", vapply(parts, `[`, "", 2), fixed = TRUE))
    names(values) <- vapply(parts, `[`, "", 1)
    values
}

# A grid after a preamble of three lines, tabs, column numbers with leading zero.
tabbed_readings <- function(path) {
    grid <- as.matrix(read.delim(path, skip = 3, row.names = 1, check.names = FALSE))
    values <- as.vector(t(grid))
    names(values) <- paste0(rep(rownames(grid), each = ncol(grid)), rep(as.numeric(colnames(grid)), nrow(grid)))
    values
}

# Two columns: well, absorbance.
typed_readings <- function(path) {
    typed <- read.csv(path)
    setNames(typed$absorbance, typed$well)
}

# --- the arithmetic --------------------------------------------------------------------------------------------------

content_of <- function(word, legend) {
    if (word == ".") return(list(role = "unused"))
    if (grepl("^[0-9]+$", word)) return(list(role = "sample", slot = word))
    entry <- legend[[word]]
    if (is.null(entry)) stop("not in the legend: ", word)
    entry
}

# A quantity that may be given once or per analyte.
for_analyte <- function(entry, one, several, analyte) {
    given <- or_default(entry[[several]], entry[[one]])
    if (is.null(given)) NA else if (is.list(given)) quantity(given[[analyte]]) else quantity(given)
}

# ΔA and net ΔA of every well in one step.
net_signal <- function(plate, method, step, before, after) {
    v_before <- quantity(step$volumes$`before-trigger`)
    v_after <- quantity(step$volumes$`after-trigger`)
    shrink <- if (identical(method$`trigger-dilution`, "correct")) v_before / v_after else 1
    sign <- if (identical(method$signal$direction, "falls")) -1 else 1
    plate$a_before <- before[plate$well]
    plate$a_after <- after[plate$well]
    plate$delta_a <- sign * (plate$a_after - plate$a_before * shrink)
    triggered <- plate$role == "blank" & plate$trigger
    untriggered <- plate$role == "blank" & !plate$trigger
    blank <- mean(plate$delta_a[triggered])
    own_blank <- vapply(plate$group, function(group) mean(plate$delta_a[triggered & plate$group == group]), 0)
    plate$net_delta_a <- plate$delta_a - own_blank
    plate$net_delta_a[untriggered | plate$role == "sample-blank"] <- NA
    for (slot in unique(plate$of[plate$role == "sample-blank"])) {
        own <- mean(plate$delta_a[plate$role == "sample-blank" & plate$of == slot])
        without <- if (any(untriggered)) blank - mean(plate$delta_a[untriggered]) else 0
        those <- plate$role %in% c("sample", "spike") & plate$of == slot
        plate$net_delta_a[those] <- (plate$delta_a[those] - own) - without
    }
    plate
}

# Concentration in the solution pipetted, from net ΔA; NA outside the standards.
calibrate <- function(plate, method, step) {
    analyte <- step$analyte
    net <- plate$net_delta_a
    level <- plate$level
    points <- plate$role == "standard"
    by <- method$calibration$by
    if (by == "absorptivity") {
        v_after <- quantity(step$volumes$`after-trigger`)
        path <- if (method$`light-path`$beam == "vertical") {
            v_after / quantity(method$`light-path`$`well-area`) / 10
        } else {
            quantity(method$`light-path`$length)
        }
        signal <- as.numeric(or_default(analyte$`signal-per-analyte`, "1"))
        volume <- plate$volume
        return(net * v_after * molar_mass(analyte$formula) /
            (quantity(method$signal$absorptivity) * path * volume * signal))
    }
    ratio <- quantity(step$volumes$sample) / plate$volume
    if (by == "single-standard") {
        slope <- mean(net[points]) / unique(level[points])
        at <- net / slope
        inside <- at <= unique(level[points])
    } else {
        weights <- switch(or_default(method$calibration$weights, "none"),
            "none" = rep(1, sum(points)), "1/x" = 1 / level[points], "1/x2" = 1 / level[points]^2)
        line <- coef(lm(net[points] ~ level[points], weights = weights))
        at <- (net - line[[1]]) / line[[2]]
        inside <- at >= min(level[points]) & at <= max(level[points])
    }
    # Below the lowest standard nothing is reported, but a difference counts what the line says there.
    followed <<- at * ratio
    ifelse(inside, at * ratio, NA)
}
followed <- NULL

# From g/L in the liquid, or in the extract of a solid, to the unit of the report.
in_unit <- function(g_per_litre, unit, row) {
    mass <- suppressWarnings(as.numeric(row$mass_g))
    extract <- suppressWarnings(as.numeric(row$extract_mL))
    density <- suppressWarnings(as.numeric(row$density_g_per_mL))
    solid <- length(mass) == 1 && !is.na(mass)
    per_100g <- if (solid) g_per_litre * extract / 1000 / mass * 100 else g_per_litre / (10 * density)
    switch(unit,
        "g/L" = g_per_litre, "mg/L" = g_per_litre * 1000, "g/100mL" = g_per_litre / 10,
        "g/100g" = per_100g, "mg/kg" = per_100g * 1e4)
}

work_up <- function(folder, readings) {
    run <- read_yaml_file(file.path(folder, "run.yaml"))
    method_path <- if (grepl("\\.yaml$", run$method)) {
        file.path(folder, run$method)
    } else {
        file.path("src/main/resources/tallywell/methods", paste0(run$method, ".yaml"))
    }
    method <- read_yaml_file(method_path)
    layout <- read_yaml_file(file.path(folder, run$layout))
    samples <- read.csv(file.path(folder, run$samples), colClasses = "character", encoding = "UTF-8",
        sep = if (grepl(";", readLines(file.path(folder, run$samples), n = 1))) ";" else ",")
    samples[] <- lapply(samples, function(column) if (any(grepl("^[0-9]+,[0-9]+$", column))) sub(",", ".", column) else column)

    plate <- wells_in_order(layout_words(layout))
    contents <- lapply(plate$word, content_of, legend = layout$legend)
    pick <- function(name, default) vapply(contents, function(each) or_default(each[[name]], default), "")
    plate$role <- pick("role", "")
    plate$of <- ifelse(plate$role == "sample", pick("slot", ""), pick("of", ""))
    plate$trigger <- pick("trigger", "") != "none"
    plate$group <- pick("group", "")
    counted <- plate$role != "unused" & !(plate$role == "sample" & !(plate$of %in% samples$slot))
    plate <- plate[counted, ]
    contents <- contents[counted]
    listed <- samples[match(plate$of, samples$slot), ]
    plate$F <- vapply(seq_len(nrow(plate)), function(i) {
        if (plate$role[i] == "control") dilution(contents[[i]]$dilution)
        else if (plate$role[i] %in% c("sample", "spike")) dilution(listed$dilution[i])
        else 1
    }, 0)

    if ("group" %in% names(samples)) {
        of_list <- plate$group == "" & !is.na(listed$group)
        plate$group[of_list] <- listed$group[of_list]
    }

    unit <- method$report$unit
    well_rows <- results <- NULL
    for (k in seq_along(method$steps)) {
        step <- method$steps[[k]]
        method_k <- method
        for (key in c("signal", "calibration", "report")) method_k[[key]] <- or_default(step[[key]], method[[key]])
        name <- step$analyte$name
        own <- vapply(or_default(listed$volume, rep(NA, nrow(plate))),
            function(each) if (is.na(each) || each == "") NA_real_ else quantity(each), 0)
        plate$volume <- ifelse(plate$role %in% c("sample", "spike") & !is.na(own), own,
            quantity(step$volumes$sample))
        plate$level <- vapply(contents, for_analyte, 0, one = "level", several = "levels", analyte = name)
        if (identical(step$`signal-formula`, "equilibrium-coupled")) {
            # A0, A1, A2: E = (A2 - A0) - (A1 - A0)^2 / (A2 - A0) is the change from an equivalent baseline to A2.
            before <- readings[[1]] + (readings[[2]] - readings[[1]])^2 / (readings[[3]] - readings[[1]])
            now <- net_signal(plate, method_k, step, before, readings[[3]])
        } else {
            now <- net_signal(plate, method_k, step, readings[[k]], readings[[k + 1]])
        }
        now$pipetted <- calibrate(now, method_k, step)
        solids <- if ("mass_g" %in% names(samples)) listed$mass_g else rep("", nrow(plate))
        low <- is.na(now$pipetted) & !is.na(now$net_delta_a) &
            method_k$calibration$by == "standards" & now$net_delta_a < mean(now$net_delta_a[now$role == "standard"])
        if (length(followed) != nrow(now)) followed <<- rep(NA_real_, nrow(now))
        now$counted <- ifelse(low, followed, now$pipetted) * now$F
        now$value <- NA_real_
        now$unit <- ""
        for (i in which(now$role %in% c("sample", "spike", "control"))) {
            solid <- now$role[i] != "control" && !is.na(solids[i]) && solids[i] != "" && !is.null(method_k$report$solids)
            now$unit[i] <- if (solid) method_k$report$solids else method_k$report$unit
            now$value[i] <- in_unit(now$pipetted[i] * now$F[i], now$unit[i],
                if (now$role[i] == "control") list() else listed[i, ])
        }
        well_rows <- rbind(well_rows, cbind(step = k, now))
        results <- rbind(results, summarise(now, contents, listed, name))
        for (rule in method$difference) {
            if (rule$of == name) results <- rbind(results, differences(now, samples, rule, step$analyte))
        }
    }
    command <- paste0("# ", R.version.string, ": Rscript docs/checks/expected-results.R")
    columns <- c("a_before", "a_after", "delta_a", "net_delta_a", "value")
    write_lines(file.path(folder, "expected-wells.csv"), c(
        command, "# value in the original sample; empty outside the standards and for what is no sample, spike or control",
        paste(c("well", "step", columns), collapse = ","),
        do.call(paste, c(list(well_rows$well, well_rows$step), lapply(well_rows[columns], digits), sep = ","))))
    write_lines(file.path(folder, "expected.csv"), c(
        command, "# value in the original sample; empty outside the standards",
        paste(names(results), collapse = ","), do.call(paste, c(unname(as.list(results)), sep = ","))))
}

summarise <- function(now, contents, listed, analyte) {
    kept <- now$role %in% c("sample", "control", "spike")
    words <- unique(now$word[kept][order(
        match(now$role[kept], c("sample", "control", "spike")), suppressWarnings(as.numeric(now$of[kept])))])
    rows <- lapply(words, function(word) {
        at <- which(now$word == word)
        first <- at[1]
        role <- now$role[first]
        entry <- contents[[first]]
        value <- mean(now$value[at])
        cv <- if (length(at) > 1) 100 * sd(now$value[at]) / abs(value) else NA
        assigned <- recovery <- NA
        if (role == "control") {
            assigned <- in_unit(for_analyte(entry, "assigned", "assigned", analyte), now$unit[first], list())
            recovery <- 100 * value / assigned
        } else if (role == "spike") {
            plain <- mean(now$pipetted[now$role == "sample" & now$of == now$of[first]])
            fraction <- if (is.null(entry$fraction)) 0 else quantity(entry$fraction)
            added <- for_analyte(entry, "added", "added", analyte)
            recovery <- 100 * (mean(now$pipetted[at]) - (1 - fraction) * plain) / added
        }
        name <- if (role == "control") or_default(entry$name, word) else listed$sample[first]
        if (role == "sample" && !is.null(listed$treatment) && listed$treatment[first] != "") {
            name <- paste0(name, " (", listed$treatment[first], ")")
        }
        data.frame(
            role = role, slot = if (role == "sample") now$of[first] else "", sample = quoted(name),
            analyte = quoted(analyte), value = digits(value), unit = now$unit[first], n = length(at),
            cv_percent = digits(cv), dilution = digits(now$F[first]), assigned = digits(assigned),
            recovery_percent = digits(recovery))
    })
    do.call(rbind, rows)
}

# What follows from the total less the free; one row a sample that stands in the list with both.
differences <- function(now, samples, rule, measured) {
    released <- as.numeric(or_default(rule$released, "1"))
    yield <- if (is.null(rule$yield)) 1 else quantity(rule$yield)
    factor <- molar_mass(rule$analyte$formula) / molar_mass(measured$formula) / released / yield
    rows <- lapply(which(samples$treatment == "total"), function(i) {
        j <- which(samples$treatment == "free" & samples$sample == samples$sample[i])
        if (length(j) != 1) return(NULL)
        total <- which(now$role == "sample" & now$of == samples$slot[i])
        free <- which(now$role == "sample" & now$of == samples$slot[j])
        data.frame(
            role = "difference", slot = samples$slot[i], sample = quoted(samples$sample[i]),
            analyte = quoted(rule$analyte$name),
            value = digits(factor * (mean(now$counted[total]) - mean(now$counted[free]))), unit = now$unit[total[1]],
            n = length(total) + length(free), cv_percent = "", dilution = digits(now$F[total[1]]), assigned = "",
            recovery_percent = "")
    })
    do.call(rbind, rows)
}

write_lines <- function(path, lines) {
    to <- file(path, "wb")
    writeBin(charToRaw(enc2utf8(paste0(paste0(lines, collapse = "\n"), "\n"))), to)
    close(to)
}

# --- the runs --------------------------------------------------------------------------------------------------------

cider <- "samples/cider-l-malic"
work_up(cider, list(grid_readings(file.path(cider, "before.csv")), grid_readings(file.path(cider, "after.csv"))))

again <- "samples/cider-l-malic-repeat"
work_up(again, list(grid_readings(file.path(again, "before.csv")), grid_readings(file.path(again, "after.csv"))))

puree <- "samples/puree-citric-solids"
work_up(puree, list(list_readings(file.path(puree, "before.csv")), list_readings(file.path(puree, "after.csv"))))

juice <- "samples/juice-glucose-fructose"
work_up(juice, lapply(file.path(juice, c("a0.txt", "a1.txt", "a2.txt")), tabbed_readings))

cuvettes <- "samples/cuvette-typed"
work_up(cuvettes, list(
    typed_readings(file.path(cuvettes, "before.csv")), typed_readings(file.path(cuvettes, "after.csv"))))

nectar <- "samples/nectar-sucrose"
work_up(nectar, list(grid_readings(file.path(nectar, "before.csv")), grid_readings(file.path(nectar, "after.csv"))))

vinegar <- "samples/vinegar-acetic-coupled"
work_up(vinegar, lapply(file.path(vinegar, c("a0.csv", "a1.csv", "a2.csv")), grid_readings))

dairy <- "samples/dairy-lactose"
work_up(dairy, list(grid_readings(file.path(dairy, "before.csv")), grid_readings(file.path(dairy, "after.csv"))))
