namespace SwingStudy.Domain.Variables;

/// <summary>How much a change of the dictionary weighs: which number of its semantic version has to rise.</summary>
public enum ChangeWeight
{
    /// <summary>Nothing changed.</summary>
    None,

    /// <summary>Explains better: stored values, new values and their reading stay.</summary>
    Patch,

    /// <summary>Adds or shows otherwise: stored values keep their meaning.</summary>
    Minor,

    /// <summary>Breaks: stored values mean something else, or would not be taken today.</summary>
    Major,
}
