# The same model by ordinal::clmm with 15 nodes; the time is that of the one fit.
suppressMessages(library(ordinal))
d <- read.csv(commandArgs(trailingOnly = TRUE)[1], stringsAsFactors = TRUE)
d$score <- factor(d$score, ordered = TRUE)
contrasts(d$scorer) <- contr.sum(nlevels(d$scorer))
t <- system.time(m <- clmm(score ~ scorer + (1 | clip), data = d, nAGQ = 15))[["elapsed"]]
b <- m$beta
cat("seconds", t, "\n")
cat("answer", format(c(b, -sum(b), m$ST[[1]][1]), digits = 12), "\n")
