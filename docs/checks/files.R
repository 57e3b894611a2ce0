# Reads Tallywell's own files (docs/formats.md) with nothing but base R. Only what the sample runs use is understood:
# block and flow mappings and sequences, plain and quoted scalars, comments. Written apart from the program it checks.

# Text without its comment: a # counts at the start or after a blank, outside quotes.
without_comment <- function(line) {
    quote <- ""
    chars <- strsplit(line, "")[[1]]
    for (i in seq_along(chars)) {
        ch <- chars[i]
        if (quote != "") {
            if (ch == quote) quote <- ""
        } else if (ch %in% c("\"", "'")) {
            quote <- ch
        } else if (ch == "#" && (i == 1 || chars[i - 1] %in% c(" ", "\t"))) {
            return(substr(line, 1, i - 1))
        }
    }
    line
}

unquote <- function(text) {
    text <- trimws(text)
    if (grepl("^\".*\"$", text) || grepl("^'.*'$", text)) substr(text, 2, nchar(text) - 1) else text
}

# Pieces of a flow collection, cut at commas outside quotes and inner brackets.
flow_pieces <- function(text) {
    depth <- 0
    quote <- ""
    pieces <- character()
    piece <- ""
    for (ch in strsplit(text, "")[[1]]) {
        if (quote != "") {
            if (ch == quote) quote <- ""
        } else if (ch %in% c("\"", "'")) {
            quote <- ch
        } else if (ch %in% c("{", "[")) {
            depth <- depth + 1
        } else if (ch %in% c("}", "]")) {
            depth <- depth - 1
        } else if (ch == "," && depth == 0) {
            pieces <- c(pieces, piece)
            piece <- ""
            next
        }
        piece <- paste0(piece, ch)
    }
    if (trimws(piece) != "") c(pieces, piece) else pieces
}

split_key <- function(text) {
    at <- regexpr(":( |$)", text)
    if (at < 0) stop("no key in: ", text)
    list(key = unquote(substr(text, 1, at - 1)), rest = trimws(substr(text, at + 1, nchar(text))))
}

scalar_or_flow <- function(text) {
    text <- trimws(text)
    inner <- substr(text, 2, nchar(text) - 1)
    if (startsWith(text, "{")) {
        parts <- lapply(flow_pieces(inner), function(each) split_key(trimws(each)))
        values <- lapply(parts, function(part) scalar_or_flow(part$rest))
        names(values) <- vapply(parts, function(part) part$key, "")
        values
    } else if (startsWith(text, "[")) {
        lapply(flow_pieces(inner), scalar_or_flow)
    } else {
        unquote(text)
    }
}

read_yaml_file <- function(path) {
    raw <- readLines(path, encoding = "UTF-8", warn = FALSE)
    lines <- sub("\\s+$", "", vapply(raw, without_comment, "", USE.NAMES = FALSE))
    lines <- lines[lines != ""]
    at <- 1
    indent_of <- function(line) nchar(line) - nchar(sub("^ +", "", line))
    # One block whose lines stand at this indent; a "- " of a sequence counts as indent for what follows it.
    block <- function(indent) {
        value <- list()
        while (at <= length(lines) && indent_of(lines[at]) == indent) {
            body <- substr(lines[at], indent + 1, nchar(lines[at]))
            if (startsWith(body, "- ")) {
                item <- sub("^- +", "", body)
                if (startsWith(item, "{") || startsWith(item, "[") || regexpr(":( |$)", item) < 0) {
                    at <<- at + 1
                    value[[length(value) + 1]] <- scalar_or_flow(item)
                } else {
                    inner <- indent + nchar(body) - nchar(item)
                    lines[at] <<- paste0(strrep(" ", inner), item)
                    value[[length(value) + 1]] <- block(inner)
                }
            } else {
                part <- split_key(body)
                at <<- at + 1
                if (part$rest == "") {
                    value[[part$key]] <- block(indent_of(lines[at]))
                } else {
                    value[[part$key]] <- scalar_or_flow(part$rest)
                }
            }
        }
        value
    }
    block(0)
}

# A number from a quantity, in the base unit asked for.
units <- list(
    "\u00b5L" = 1, "mL" = 1e3, "g/L" = 1, "mg/L" = 1e-3, "mm2" = 1, "cm" = 1, "mm" = 0.1, "s" = 1, "min" = 60,
    "L/mol/cm" = 1, "L/mmol/cm" = 1e3, "%" = 0.01
)
quantity <- function(text) {
    parts <- regmatches(text, regexec("^([-+0-9.eE]+) *(.*)$", text))[[1]]
    factor <- units[[parts[3]]]
    if (is.null(factor)) stop("unit not known here: ", text)
    as.numeric(parts[2]) * factor
}

dilution <- function(text) {
    if (is.null(text) || is.na(text) || text == "") return(1)
    if (grepl("+", text, fixed = TRUE)) {
        parts <- as.numeric(strsplit(text, "+", fixed = TRUE)[[1]])
        return(sum(parts) / parts[1])
    }
    as.numeric(text)
}

or_default <- function(value, default) if (is.null(value)) default else value

# Words of a layout as a matrix with row letters and column numbers.
layout_words <- function(layout) {
    rows <- lapply(layout$wells, function(row) strsplit(trimws(row), " +")[[1]])
    if (length(unique(lengths(rows))) != 1) stop("rows of different length")
    words <- do.call(rbind, rows)
    if (length(words) != as.numeric(layout$plate)) stop("number of wells is not ", layout$plate)
    dimnames(words) <- list(names(layout$wells), seq_len(ncol(words)))
    words
}

# Wells of a matrix in row order: one row a well.
wells_in_order <- function(words) {
    data.frame(
        well = paste0(rep(rownames(words), each = ncol(words)), rep(seq_len(ncol(words)), nrow(words))),
        row = rep(seq_len(nrow(words)), each = ncol(words)),
        column = rep(seq_len(ncol(words)), nrow(words)),
        word = as.vector(t(words)), stringsAsFactors = FALSE
    )
}

atomic_mass <- c(C = 12.011, H = 1.0080, O = 15.999) # IUPAC/CIAAW abridged standard atomic weights 2021
molar_mass <- function(formula) {
    parts <- regmatches(formula, gregexpr("[A-Z][0-9]*", formula))[[1]]
    counts <- ifelse(nchar(parts) == 1, 1, suppressWarnings(as.numeric(substr(parts, 2, nchar(parts)))))
    sum(atomic_mass[substr(parts, 1, 1)] * counts)
}
