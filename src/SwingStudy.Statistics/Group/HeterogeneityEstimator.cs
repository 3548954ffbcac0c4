namespace SwingStudy.Statistics.Group;

/// <summary>How the variance τ² of true effects between players is estimated. All are cut at zero.</summary>
public enum HeterogeneityEstimator
{
    /// <summary>By moments, (Q − (k − 1))/(Σw − Σw²/Σw). Source: DerSimonian and Laird (1986), Controlled Clinical Trials 7:177–188.</summary>
    DerSimonianLaird,

    /// <summary>τ² at which Q(τ²) = k − 1. Source: Paule and Mandel (1982), J Res NBS 87:377–385.</summary>
    PauleMandel,

    /// <summary>Restricted maximum likelihood by Fisher scoring. Source: Viechtbauer (2005), J Educ Behav Stat 30:261–293.</summary>
    Reml,

    /// <summary>Maximum likelihood by Fisher scoring; biased down with few players. Source: Viechtbauer (2005).</summary>
    Ml,
}
