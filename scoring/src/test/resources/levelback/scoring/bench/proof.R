# The same figures from the same tables, in base R and pROC, vectorised: what a person would write who minds the time.
suppressMessages(library(pROC))
folder <- commandArgs(TRUE)[1]
s <- read.csv(file.path(folder, "scores.csv"), colClasses = c("character", "character", "numeric", "character"))
t <- read.csv(file.path(folder, "trims.csv"), colClasses = "character")
s$day <- as.integer(as.Date(s$date)); t$day <- as.integer(as.Date(t$date))
from <- proc.time()[["elapsed"]]
cut <- 2
# Join: a trim belongs to every score whose window of 0 to 14 days holds it.
cows <- unique(s$cow); s$c <- match(s$cow, cows); t$c <- match(t$cow, cows); t <- t[!is.na(t$c), ]
s <- s[order(s$c, s$day), ]; t <- t[order(t$c, t$day), ]
ks <- s$c * 1e6 + s$day; kt <- t$c * 1e6 + t$day
first <- findInterval(ks - 0.5, kt) + 1; last <- findInterval(ks + 14.5, kt)
s$lifted <- last >= first
hit <- c(0, cumsum(t$lesion != "NONE"))
s$lesion <- s$lifted & hit[last + 1] - hit[pmin(first, last + 1)] > 0
l <- s[s$lifted, ]
ratio <- function(x, n, g) {
  X <- rowsum(x, g)[, 1]; N <- rowsum(n, g)[, 1]; k <- N > 0; C <- sum(k); p <- sum(x) / sum(n)
  se <- sqrt(C / (C - 1) * sum((X - p * N)^2)) / sum(n); h <- qt(.975, C - 1) * se / (p * (1 - p))
  c(p, plogis(qlogis(p) - h), plogis(qlogis(p) + h))
}
figures <- function(cut) {
  pos <- as.numeric(l$score >= cut); y <- as.numeric(l$lesion)
  list(se = ratio(pos * y, y, l$c), sp = ratio((1 - pos) * (1 - y), 1 - y, l$c),
       ppv = ratio(pos * y, pos, l$c), npv = ratio((1 - pos) * (1 - y), 1 - pos, l$c))
}
f <- figures(cut)
cuts <- lapply(sort(unique(s$score))[-1], figures)
# Area, clustered by cow after Obuchowski 1997.
r <- roc(l$lesion, l$score, direction = "<", levels = c(FALSE, TRUE), quiet = TRUE); A <- as.numeric(auc(r))
lev <- sort(unique(l$score)); ns <- tabulate(match(l$score[l$lesion], lev), length(lev)); nh <- tabulate(match(l$score[!l$lesion], lev), length(lev))
v10 <- (cumsum(nh) - nh / 2) / sum(nh); v01 <- (sum(ns) - cumsum(ns) + ns / 2) / sum(ns)
at <- match(l$score, lev)
S <- rowsum(ifelse(l$lesion, v10[at] - A, 0), l$c)[, 1]; H <- rowsum(ifelse(l$lesion, 0, v01[at] - A), l$c)[, 1]
cs <- length(unique(l$c[l$lesion])); ch <- length(unique(l$c[!l$lesion])); ca <- length(S); m <- as.numeric(sum(ns)); n <- as.numeric(sum(nh))
va <- sum(S^2) * cs / (cs - 1) / m^2 + sum(H^2) * ch / (ch - 1) / n^2 + 2 * sum(S * H) * ca / (ca - 1) / (m * n)
# Begg and Greenes by level, linearised over cows.
lv <- sort(unique(s$score)); i <- match(s$score, lev)
N <- tabulate(match(s$score, lv), length(lv)); L <- tabulate(match(l$score, lv), length(lv)); W <- tabulate(match(l$score[l$lesion], lv), length(lv)); p <- W / L
k <- match(s$score, lv); shift <- ifelse(s$lifted, (N / L)[k] * (s$lesion - p[k]), 0); ofLesion <- p[k] + shift; ofClean <- 1 - ofLesion
linear <- function(part, whole) {
  v <- sum(part) / sum(whole); u <- rowsum((part - v * whole) / sum(whole), s$c)[, 1]; C <- length(u)
  se <- sqrt(C / (C - 1) * sum(u^2)); h <- qt(.975, C - 1) * se / (v * (1 - v)); c(v, plogis(qlogis(v) - h), plogis(qlogis(v) + h))
}
pos <- s$score >= cut
corrected <- list(se = linear(pos * ofLesion, ofLesion), prev = linear(ofLesion, rep(1, nrow(s))),
                  ppv = linear(pos * ofLesion, as.numeric(pos)), npv = linear((!pos) * ofClean, as.numeric(!pos)))
corrected$sp <- linear((!pos) * ofClean, ofClean)
n1 <- sum(ofLesion); n0 <- sum(ofClean); a <- N * p; b <- N * (1 - p); AC <- sum(a * (cumsum(b) - b / 2)) / (n1 * n0)
ga <- (cumsum(b) - b / 2 - AC * n0) / (n1 * n0); gb <- (n1 - cumsum(a) + a / 2 - AC * n1) / (n1 * n0)
vc <- sum(rowsum(ga[k] * ofLesion + gb[k] * ofClean, s$c)[, 1]^2)
# Each lesion, clustered by cow.
ti <- rep(seq_along(first), pmax(0, last - first + 1)); tj <- sequence(pmax(0, last - first + 1), first)
by <- unique(data.frame(obs = ti, code = t$lesion[tj])); by <- by[by$code != "NONE", ]
byLesion <- lapply(split(by$obs, by$code), function(o) ratio(as.numeric(s$score[o] >= cut), rep(1, length(o)), s$c[o]))
# Ratios and Youden's index by cow; net benefit at every cut and threshold; days to the lift; legs.
y <- as.numeric(l$lesion); q <- as.numeric(l$score >= cut); se <- f$se[1]; sp <- f$sp[1]
spread <- function(u) sqrt(sum(rowsum(u, l$c)[, 1]^2) * ca / (ca - 1))
lrp <- spread(q * y / sum(q * y) - y / sum(y) - q * (1 - y) / sum(q * (1 - y)) + (1 - y) / sum(1 - y))
you <- spread((q * y - se * y) / sum(y) + ((1 - q) * (1 - y) - sp * (1 - y)) / sum(1 - y))
net <- lapply(lv[-1], function(z) sapply(seq(.05, .5, .05), function(h) { u <- (l$score >= z) * (y - (1 - y) * h / (1 - h)); v <- mean(u); c(v, spread(u - v) / length(u)) }))
lag <- table(t$day[pmin(first, nrow(t))][s$lifted] - s$day[s$lifted])
trend <- prop.trend.test(W, L, lv)
seconds <- proc.time()[["elapsed"]] - from
cat("sensitivity", format(f$se, digits = 10), "\n"); cat("corrected", format(corrected$se, digits = 10), "\n")
cat("auc", format(c(A, A - qnorm(.975) * sqrt(va), A + qnorm(.975) * sqrt(va)), digits = 10), "\n")
cat(seconds, "\n", sep = "")
