namespace SwingStudy.Domain.Variables;

/// <summary>Scale of measurement, which decides the statistics that make sense.</summary>
public enum MeasurementScale
{
    /// <summary>Has a true zero: percentages and ratios make sense.</summary>
    Ratio,

    /// <summary>Differences make sense, ratios do not (angles, times relative to impact, temperatures).</summary>
    Interval,

    /// <summary>Order alone makes sense (ratings).</summary>
    Ordinal,

    /// <summary>Names without order.</summary>
    Nominal,
}
