using System.Collections.Frozen;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>The sources of all statistics, once, by key.</summary>
public static class Citations
{
    private static readonly FrozenDictionary<string, string> ByKey = new Dictionary<string, string>
    {
        ["becker-1988"] = "Becker BJ (1988). Synthesizing standardized mean-change measures. British Journal of Mathematical and Statistical Psychology 41:257-278.",
        ["benjamini-hochberg-1995"] = "Benjamini Y, Hochberg Y (1995). Controlling the false discovery rate. Journal of the Royal Statistical Society B 57:289-300.",
        ["bakdash-marusich-2017"] = "Bakdash JZ, Marusich LR (2017). Repeated measures correlation. Frontiers in Psychology 8:456.",
        ["bland-altman-1986"] = "Bland JM, Altman DG (1986). Statistical methods for assessing agreement between two methods of clinical measurement. Lancet 327:307-310.",
        ["bland-altman-1995"] = "Bland JM, Altman DG (1995). Calculating correlation coefficients with repeated observations: Part 1, correlation within subjects. BMJ 310:446.",
        ["bland-altman-1999"] = "Bland JM, Altman DG (1999). Measuring agreement in method comparison studies. Statistical Methods in Medical Research 8:135-160.",
        ["bland-altman-2007"] = "Bland JM, Altman DG (2007). Agreement between methods of measurement with multiple observations per individual. Journal of Biopharmaceutical Statistics 17:571-582.",
        ["borenstein-2009"] = "Borenstein M, Hedges LV, Higgins JPT, Rothstein HR (2009). Introduction to Meta-Analysis. Wiley.",
        ["chan-1983"] = "Chan TF, Golub GH, LeVeque RJ (1983). Algorithms for computing the sample variance. The American Statistician 37:242-247.",
        ["cliff-1993"] = "Cliff N (1993). Dominance statistics: ordinal analyses to answer ordinal questions. Psychological Bulletin 114:494-509.",
        ["cumming-finch-2001"] = "Cumming G, Finch S (2001). A primer on the understanding, use, and calculation of confidence intervals based on central and noncentral distributions. Educational and Psychological Measurement 61:532-574.",
        ["dersimonian-laird-1986"] = "DerSimonian R, Laird N (1986). Meta-analysis in clinical trials. Controlled Clinical Trials 7:177-188.",
        ["glass-1976"] = "Glass GV (1976). Primary, secondary, and meta-analysis of research. Educational Researcher 5(10):3-8.",
        ["hedges-1999"] = "Hedges LV, Gurevitch J, Curtis PS (1999). The meta-analysis of response ratios in experimental ecology. Ecology 80:1150-1156.",
        ["hedges-olkin-1985"] = "Hedges LV, Olkin I (1985). Statistical Methods for Meta-Analysis. Academic Press.",
        ["higgins-thompson-2002"] = "Higgins JPT, Thompson SG (2002). Quantifying heterogeneity in a meta-analysis. Statistics in Medicine 21:1539-1558.",
        ["hochberg-1988"] = "Hochberg Y (1988). A sharper Bonferroni procedure for multiple tests of significance. Biometrika 75:800-802.",
        ["holm-1979"] = "Holm S (1979). A simple sequentially rejective multiple test procedure. Scandinavian Journal of Statistics 6:65-70.",
        ["hopkins-2000"] = "Hopkins WG (2000). Measures of reliability in sports medicine and science. Sports Medicine 30:1-15.",
        ["hopkins-2015"] = "Hopkins WG (2015). Individual responses made easy. Journal of Applied Physiology 118:1444-1446.",
        ["jacobson-truax-1991"] = "Jacobson NS, Truax P (1991). Clinical significance: a statistical approach to defining meaningful change in psychotherapy research. Journal of Consulting and Clinical Psychology 59:12-19.",
        ["kenward-roger-1997"] = "Kenward MG, Roger JH (1997). Small sample inference for fixed effects from restricted maximum likelihood. Biometrics 53:983-997.",
        ["kerby-2014"] = "Kerby DS (2014). The simple difference formula: an approach to teaching nonparametric correlation. Comprehensive Psychology 3:11.IT.3.1.",
        ["knapp-hartung-2003"] = "Knapp G, Hartung J (2003). Improved tests for a random effects meta-regression with a single covariate. Statistics in Medicine 22:2693-2710.",
        ["lajeunesse-2015"] = "Lajeunesse MJ (2015). Bias and correction for the log response ratio in ecological meta-analysis. Ecology 96:2056-2063.",
        ["lakens-2013"] = "Lakens D (2013). Calculating and reporting effect sizes to facilitate cumulative science. Frontiers in Psychology 4:863.",
        ["lin-1989"] = "Lin LI-K (1989). A concordance correlation coefficient to evaluate reproducibility. Biometrics 45:255-268; corrected 2000, 56:324-325.",
        ["mcgraw-wong-1996"] = "McGraw KO, Wong SP (1996). Forming inferences about some intraclass correlation coefficients. Psychological Methods 1:30-46.",
        ["morris-deshon-2002"] = "Morris SB, DeShon RP (2002). Combining effect size estimates in meta-analysis with repeated measures and independent-groups designs. Psychological Methods 7:105-125.",
        ["nist-strd"] = "NIST. Statistical Reference Datasets: univariate summary statistics and analysis of variance. https://www.itl.nist.gov/div898/strd/",
        ["paule-mandel-1982"] = "Paule RC, Mandel J (1982). Consensus values and weighting factors. Journal of Research of the National Bureau of Standards 87:377-385.",
        ["pinheiro-bates-2000"] = "Pinheiro JC, Bates DM (2000). Mixed-Effects Models in S and S-PLUS. Springer.",
        ["satterthwaite-1946"] = "Satterthwaite FE (1946). An approximate distribution of estimates of variance components. Biometrics Bulletin 2:110-114.",
        ["searle-1971"] = "Searle SR (1971). Linear Models. Wiley, chapters 10 and 11.",
        ["shrout-fleiss-1979"] = "Shrout PE, Fleiss JL (1979). Intraclass correlations: uses in assessing rater reliability. Psychological Bulletin 86:420-428.",
        ["spearman-1910"] = "Spearman C (1910). Correlation calculated from faulty data. British Journal of Psychology 3:271-295; Brown W, ibid. 296-322.",
        ["vargha-delaney-2000"] = "Vargha A, Delaney HD (2000). A critique and improvement of the CL common language effect size statistics. Journal of Educational and Behavioral Statistics 25:101-132.",
        ["viechtbauer-2007"] = "Viechtbauer W (2007). Confidence intervals for the amount of heterogeneity in meta-analysis. Statistics in Medicine 26:37-52.",
        ["weir-2005"] = "Weir JP (2005). Quantifying test-retest reliability using the intraclass correlation coefficient and the SEM. Journal of Strength and Conditioning Research 19:231-240.",
        ["welch-1947"] = "Welch BL (1947). The generalization of 'Student's' problem when several different population variances are involved. Biometrika 34:28-35.",
        ["zieba-2010"] = "Zieba A (2010). Effective number of observations and unbiased estimators of variance for autocorrelated data. Metrology and Measurement Systems 17:3-16.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>All keys, sorted.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. ByKey.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The full reference of a key.</summary>
    /// <exception cref="KeyNotFoundException">No source has this key.</exception>
    public static string Get(string key) => ByKey.TryGetValue(key, out var text) ? text : throw new KeyNotFoundException($"No citation has the key '{key}'.");
}
