# Prints, for each table and column: table, column, type, rows, values present, sum (numbers, truths, lists) or sum of lengths (texts).
folder <- commandArgs(trailingOnly = TRUE)[1]
setwd(folder)
invisible(capture.output(source("load.R")))
kind <- function(values) {
  if (inherits(values, "POSIXct")) "moment" else if (is.logical(values)) "truth" else if (is.integer(values)) "integer"
  else if (is.numeric(values)) "number" else if (any(!is.na(values)) && all(startsWith(values[!is.na(values)], "["))) "list" else "text"
}
numbers <- function(lists) {
  cells <- unlist(strsplit(substr(lists, 2, nchar(lists) - 1), ",", fixed = TRUE))
  as.numeric(cells[cells != "null"])
}
total <- function(values, type) {
  present <- values[!is.na(values)]
  switch(type,
    moment = sum(round(as.numeric(present) * 1000)), truth = sum(present), integer = sum(as.numeric(present)), number = sum(present), list = sum(numbers(present)),
    text = sum(nchar(present, type = "chars")))
}
for (name in sort(names(tables), method = "radix")) {
  rows <- tables[[name]]
  for (column in names(rows)) {
    type <- kind(rows[[column]])
    cat(sprintf("%s %s %s %d %d %.6e\n", name, column, type, nrow(rows), sum(!is.na(rows[[column]])), total(rows[[column]], type)))
  }
}
