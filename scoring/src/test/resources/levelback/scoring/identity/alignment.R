# The same forward and backward sums as Alignment, in R: states are sets of taken reads within a moving window.
# Usage: Rscript alignment.R FOLDER, with passes.txt, reads.txt (seconds, ascending) and parameters.txt
# (offset, drift, sigma, miss, stray per s, inversion factor). Writes unread.txt; prints the median seconds of five runs.
folder <- commandArgs(TRUE)[1]
t <- scan(file.path(folder, "passes.txt"), quiet = TRUE)
r <- scan(file.path(folder, "reads.txt"), quiet = TRUE)
p <- scan(file.path(folder, "parameters.txt"), quiet = TRUE)
align <- function(t, r, offset, drift, sigma, miss, stray, eps) {
  mu <- t + offset + drift * (t - t[1])
  n <- length(t)
  from <- findInterval(mu - 9 * sigma, r, left.open = TRUE)      # reads before the window
  size <- findInterval(mu + 9 * sigma, r) - from
  ones <- function(s) { k <- 0; while (any(s > 0)) { k <- k + s %% 2; s <- s %/% 2 }; k }
  level <- (1 - miss) / stray
  moves <- list()
  for (k in 0:max(size)) {                                       # for each size of window: states, and who may move
    s <- 0:(2^k - 1)
    moves[[k + 1]] <- if (k == 0) list() else lapply(1:k, function(j) {
      free <- which(s %/% 2^(j - 1) %% 2 == 0)
      list(free = free, to = free + 2^(j - 1), inv = ones((free - 1) %/% 2^j))
    })
  }
  before <- vector("list", n); weights <- vector("list", n)
  state <- 1; at <- from[1]
  for (i in 1:n) {
    k <- size[i]; by <- from[i] - at
    index <- (seq_along(state) - 1) %/% 2^by + 1
    into <- numeric(2^k); s <- rowsum(state, index); into[as.integer(rownames(s))] <- s
    into <- into / max(into); before[[i]] <- into
    w <- if (k > 0) level * dnorm(r[from[i] + 1:k], mu[i], sigma) else numeric(0); weights[[i]] <- w
    out <- into * miss
    for (j in seq_len(k)) { m <- moves[[k + 1]][[j]]; out[m$to] <- out[m$to] + into[m$free] * w[j] * eps^m$inv }
    state <- out; at <- from[i]
  }
  unread <- numeric(n); after <- rep(1, 2^size[n])
  for (i in n:1) {
    k <- size[i]; w <- weights[[i]]; into <- before[[i]]
    rest <- miss * after; none <- sum(into * rest); read <- numeric(k)
    for (j in seq_len(k)) {
      m <- moves[[k + 1]][[j]]; on <- w[j] * eps^m$inv * after[m$to]
      read[j] <- sum(into[m$free] * on); rest[m$free] <- rest[m$free] + on
    }
    unread[i] <- none / (none + sum(read))
    if (i > 1) {
      by <- from[i] - from[i - 1]
      after <- rest[(0:(2^size[i - 1] - 1)) %/% 2^by + 1]; after <- after / max(after)
    }
  }
  unread
}
seconds <- numeric(5)
for (run in 1:5) seconds[run] <- system.time(u <- align(t, r, p[1], p[2], p[3], p[4], p[5], p[6]))[["elapsed"]]
write(format(u, digits = 15), file.path(folder, "unread.txt"), ncolumns = 1)
cat(median(seconds), "\n")
