namespace SwingStudy.Statistics.Catalogue;

/// <summary>What a larger value of a statistic says.</summary>
public enum EffectDirection
{
    /// <summary>Positive (or above the null value) when values rose from the first condition to the second.</summary>
    PositiveWhenValuesRise,

    /// <summary>Positive (or above the null value) when the first condition lies above the second.</summary>
    PositiveWhenFirstIsHigher,

    /// <summary>Larger means more repeatable or closer agreement.</summary>
    LargerIsCloser,

    /// <summary>Larger means more scatter, noise or error.</summary>
    LargerIsNoisier,

    /// <summary>Neither end is better; the size alone is told.</summary>
    None,
}
