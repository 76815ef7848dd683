//! Routes of jobs, their lots and runs. Their hashes have no common prefix.

use uuid::Uuid;

/// A page of jobs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JobsRoute {
    /// All jobs.
    List,
    /// A new job.
    New,
    /// A job.
    Job(Uuid),
    /// The fields of a job.
    Edit(Uuid),
    /// A new job that repeats one.
    Repeat(Uuid),
    /// A new lot of a job.
    NewLot(Uuid),
    /// The fields of a lot.
    EditLot(Uuid),
    /// A new run of a lot.
    NewRun(Uuid),
    /// The fields of a run.
    EditRun(Uuid),
}

impl JobsRoute {
    /// Parses the segments of the hash; `None` if they name no page of jobs.
    pub fn from_path(path: &[&str]) -> Option<Self> {
        let id = |text: &str| Uuid::parse_str(text).ok();
        match path {
            ["jobs"] => Some(Self::List),
            ["job", "new"] => Some(Self::New),
            ["job", job] => id(job).map(Self::Job),
            ["job", job, "edit"] => id(job).map(Self::Edit),
            ["job", job, "again"] => id(job).map(Self::Repeat),
            ["job", job, "lot"] => id(job).map(Self::NewLot),
            ["lot", lot] => id(lot).map(Self::EditLot),
            ["lot", lot, "run"] => id(lot).map(Self::NewRun),
            ["run", run] => id(run).map(Self::EditRun),
            _ => None,
        }
    }

    /// The hash without its `#`.
    pub fn path(self) -> String {
        match self {
            Self::List => "/jobs".into(),
            Self::New => "/job/new".into(),
            Self::Job(job) => format!("/job/{job}"),
            Self::Edit(job) => format!("/job/{job}/edit"),
            Self::Repeat(job) => format!("/job/{job}/again"),
            Self::NewLot(job) => format!("/job/{job}/lot"),
            Self::EditLot(lot) => format!("/lot/{lot}"),
            Self::NewRun(lot) => format!("/lot/{lot}/run"),
            Self::EditRun(run) => format!("/run/{run}"),
        }
    }

    /// The whole hash.
    pub fn hash(self) -> String {
        super::Route::Jobs(self).hash()
    }
}
