namespace SwingStudy.Statistics.Resampling;

/// <summary>How a quantile of R sorted resampled values is read.</summary>
public enum QuantileRule
{
    /// <summary>
    /// Order statistic (R + 1)·p, interpolated on the scale of normal quantiles (Davison and Hinkley 1997, Bootstrap Methods, eq. 5.8).
    /// </summary>
    NormalInterpolation,

    /// <summary>Order statistic (R + 1)·p, linear in between (Hyndman and Fan 1996, definition 6).</summary>
    HyndmanFan6,

    /// <summary>Order statistic (R − 1)·p + 1, linear in between (Hyndman and Fan 1996, definition 7).</summary>
    HyndmanFan7,
}
