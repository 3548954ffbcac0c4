using SwingStudy.Domain.Studies;

namespace SwingStudy.Pipeline.Running;


/// <summary>One step of the way of the data: a pure function of what it declares.</summary>
public abstract class Stage
{
    /// <summary>What the stage says about itself.</summary>
    public abstract StageDeclaration Declaration { get; }

    /// <summary>The stage with the settings of a study.</summary>
    internal abstract BoundStage Bind(StudySetup setup);
}
