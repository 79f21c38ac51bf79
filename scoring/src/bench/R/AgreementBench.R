# The same figures in base R, own script: level counts of a clip by one tabulate(), pairs by table(); values, and the variances of the
# kappas and of Fleiss' and Gwet's coefficients. Alphas' and W's intervals are left out on both sides.
d <- read.csv(commandArgs(trailingOnly = TRUE)[1], stringsAsFactors = TRUE)
figures <- function(d) {
  v <- sort(unique(d$score)); q <- length(v); clip <- as.integer(d$clip); n <- nlevels(d$clip); k <- nlevels(d$scorer)
  l <- match(d$score, v)
  R <- matrix(tabulate((l - 1) * n + clip, n * q), n)
  r <- rowSums(R); two <- r >= 2; size <- max(v) - min(v); far <- abs(outer(v, v, "-"))
  W <- list(diag(q), 1 - far / size, 1 - (far / size)^2)
  exact <- sum(R * (R - 1)) / sum(r * (r - 1))
  near <- sum((R %*% (far <= 1)) * R - R) / sum(r * (r - 1))
  shares <- R / r; pi <- colMeans(shares)
  gwet <- function(w, fleiss) {
    pa_i <- ifelse(two, rowSums(R * (R %*% t(w) - 1)) / (r * (r - 1)), 0); pa <- mean(pa_i[two])
    slope <- if (fleiss) drop(w %*% pi) else sum(w) / (q * (q - 1)) * (1 - pi)
    pe <- sum(pi * slope); g <- (pa - pe) / (1 - pe)
    off <- n / sum(two) * (pa_i - pe) / (1 - pe) * two - 2 * (1 - g) * (drop(shares %*% slope) - pe) / (1 - pe) - g
    c(g, sqrt(sum(off^2) / (n * (n - 1))))
  }
  fk <- gwet(W[[1]], TRUE); a1 <- gwet(W[[1]], FALSE); a2 <- gwet(W[[2]], FALSE); a3 <- gwet(W[[3]], FALSE)
  X <- R[two, ] / (r[two] - 1); o <- crossprod(R[two, ], X) - diag(colSums(X)); m <- colSums(o); N <- sum(m)
  alpha <- function(D) 1 - (N - 1) * sum(o * D) / sum(outer(m, m) * D)
  mid <- cumsum(m) - m / 2
  al <- c(alpha(1 - diag(q)), alpha(outer(mid, mid, "-")^2), alpha(outer(v, v, "-")^2))
  M <- matrix(NA_integer_, n, k); M[cbind(clip, as.integer(d$scorer))] <- l
  pair <- NULL
  for (a in 1:(k - 1)) for (b in (a + 1):k) {
    t <- matrix(tabulate((M[, b] - 1) * q + M[, a], q * q), q); nn <- sum(t); p <- t / nn; ra <- rowSums(p); cb <- colSums(p)
    ks <- sapply(W, function(w) {
      po <- sum(w * p); pe <- sum(w * outer(ra, cb)); e <- outer(drop(w %*% cb), drop(t(w) %*% ra), "+")
      c((po - pe) / (1 - pe), sqrt((sum(p * (w * (1 - pe) - e * (1 - po))^2) - (po * pe - 2 * pe + po)^2) / nn) / (1 - pe)^2)
    })
    x <- v[M[, a]] - v[M[, b]]; x <- x[!is.na(x)]
    u <- upper.tri(t); both <- (t + t(t))[u]; bowker <- sum(((t - t(t))[u]^2 / both)[both > 0])
    S <- diag(rowSums(t) + colSums(t) - 2 * diag(t)) - (t + t(t)) * (1 - diag(q)); e <- (rowSums(t) - colSums(t))[-q]
    stuart <- sum(e * solve(S[-q, -q], e)); bhapkar <- stuart / (1 - stuart / nn)
    if (is.null(pair)) pair <- c(ks[1, 3], mean(x)) else c(ks, mean(x), sd(x))
  }
  Y <- matrix(v[M[r == k, ]], ncol = k); nc <- nrow(Y); g <- mean(Y)
  msr <- k * sum((rowMeans(Y) - g)^2) / (nc - 1); msc <- nc * sum((colMeans(Y) - g)^2) / (k - 1)
  mse <- (sum((Y - g)^2) - msr * (nc - 1) - msc * (k - 1)) / ((nc - 1) * (k - 1))
  ranks <- apply(Y, 2, rank); s <- rowSums(ranks); w <- sum((s - mean(s))^2)
  spread <- rowSums((R %*% far) * R) / (r * (r - 1)); hardest <- order(-round(spread, 9))[1:10]
  y <- d$score - (rowsum(d$score, clip)[, 1] / r)[clip]; x <- matrix(0, nrow(d), k); x[cbind(seq_len(nrow(d)), as.integer(d$scorer))] <- 1
  x <- x - (rowsum(x, clip) / r)[clip, ]; xx <- crossprod(x) + 1 / k; b <- drop(solve(xx, crossprod(x, y)))
  shift <- list(b, sqrt(sum((y - x %*% b)^2) / (sum(r[two]) - sum(two) - k + 1) * (diag(solve(xx)) - 1 / k)))
  level <- colSums(R * (R - 1)) / colSums(R * (r - 1))
  c(exact, fk[1], a1[1], a3[1], al[2], (msr - mse) / (msr + (k - 1) * mse + k * (msc - mse) / nc), pair)
}
times <- sapply(1:3, function(i) system.time(figures(d))[["elapsed"]])
cat("seconds", median(times), "\n")
cat("answer", format(figures(d), digits = 15), "\n")
